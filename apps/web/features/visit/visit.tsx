'use client'
import { jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { FieldFrame } from '@almanac/ui/field-frame'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { CloseOutForm } from './close-out-form.tsx'
import { procedureOf, useProcedureWords } from './procedure-of.ts'
import { ProcedureSteps } from './procedure-steps.tsx'
import { useDraft } from './use-draft.ts'
import { VisitBrief } from './visit-brief.tsx'
import { VisitClosed } from './visit-closed.tsx'

/** One visit on the tablet: the brief, then the procedure step by step, then the closing form. */
export function Visit({ visitId }: { visitId: string }) {
  const { api, me, figures } = useSession()
  const page = useQuery(api.visits.get.queryOptions({ input: { visitId } }))
  const handle = useDraft(visitId)
  const { draft, ready, kept, change } = handle
  const visit = page.data
  const entries = Object.values(draft.answers).filter((answer) => answer.text !== '').length
  const status =
    visit?.state === 'closed'
      ? 'has reached the office'
      : !kept
        ? 'this tablet cannot keep entries: finish without leaving the page'
        : entries > 0
          ? `${entries} ${entries === 1 ? 'entry' : 'entries'} kept on this tablet, not yet at the office`
          : ''
  const left = visit && ready && draft.startedAt === null ? handle.leftFor(visit.jobId) : null
  const words = useProcedureWords()
  const procedure = visit ? procedureOf(visit, me.company, figures, words) : null
  const back = (
    <TextLink href="/today" link={Link}>
      Today
    </TextLink>
  )
  return (
    <FieldFrame title={visit ? `${visit.siteLabel} · ${jobKindWords[visit.kind].toLowerCase()}` : 'Visit'} status={status} back={back}>
      {page.error ? (
        <Problem happened={readFailure(page.error).message} onRetry={() => void page.refetch()} retrying={page.isFetching} />
      ) : null}
      {page.isPending || !ready ? <Skeleton lines={8} label="Reading the visit" /> : null}
      {visit && procedure && ready ? (
        visit.state === 'closed' ? (
          <VisitClosed visit={visit} />
        ) : draft.startedAt === null ? (
          <>
            {left ? (
              <Notice kind="mind" action={<Button onClick={() => handle.takeOver(left)}>Use these entries</Button>}>
                This tablet holds {left.entries === 1 ? 'one entry' : `${left.entries} entries`} of another visit for this job, not sent.
              </Notice>
            ) : null}
            <VisitBrief
              visit={visit}
              procedure={procedure}
              onStarted={() => change({ jobId: visit.jobId, startedAt: new Date().toISOString(), step: 0 })}
            />
          </>
        ) : draft.step < procedure.steps.length ? (
          <ProcedureSteps procedure={procedure} handle={handle} visit={visit} />
        ) : (
          <CloseOutForm visit={visit} procedure={procedure} handle={handle} />
        )
      ) : null}
    </FieldFrame>
  )
}
