'use client'
import { Button } from '@almanac/ui/button'
import { FieldFrame } from '@almanac/ui/field-frame'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { CloseOutForm } from './close-out-form.tsx'
import { procedureOf, useProcedureWords } from './procedure-of.ts'
import { ProcedureSteps } from './procedure-steps.tsx'
import { SafeEndingPage } from './safe-ending-page.tsx'
import { standingStop } from './standing-stop.ts'
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
  const words = useWords('visit')
  const kinds = useWords('jobKind')
  const status =
    visit?.state === 'closed' ? words('sent') : !kept ? words('cannotKeep') : entries > 0 ? words('saved', { count: entries }) : ''
  const left = visit && ready && draft.startedAt === null ? handle.leftFor(visit.jobId) : null
  const spoken = useProcedureWords()
  const procedure = visit ? procedureOf(visit, me.company, figures, spoken, draft.answers) : null
  const stop =
    visit && procedure && visit.state !== 'closed' && draft.startedAt !== null ? standingStop(visit, procedure, draft.answers) : null
  const back = (
    <TextLink href="/today" link={Link}>
      {words('today')}
    </TextLink>
  )
  return (
    <FieldFrame
      title={visit ? words('title', { site: visit.siteLabel, kind: kinds(visit.kind).toLowerCase() }) : words('untitled')}
      status={status}
      back={back}
      stopped={stop !== null}
    >
      {page.error ? (
        <Problem happened={readFailure(page.error).message} onRetry={() => void page.refetch()} retrying={page.isFetching} />
      ) : null}
      {page.isPending || !ready ? <Skeleton lines={8} label={words('loading')} /> : null}
      {visit && procedure && ready ? (
        visit.state === 'closed' ? (
          <VisitClosed visit={visit} />
        ) : draft.startedAt === null ? (
          <>
            {left ? (
              <Notice kind="mind" action={<Button onClick={() => handle.takeOver(left)}>{words('useEntries')}</Button>}>
                {words('leftOver', { count: left.entries })}
              </Notice>
            ) : null}
            <VisitBrief
              visit={visit}
              procedure={procedure}
              onStarted={() => change({ jobId: visit.jobId, startedAt: new Date().toISOString(), step: 0 })}
            />
          </>
        ) : stop && draft.step < procedure.steps.length ? (
          <SafeEndingPage stop={stop} steps={procedure.steps.length} handle={handle} />
        ) : draft.step < procedure.steps.length ? (
          <ProcedureSteps procedure={procedure} handle={handle} visit={visit} />
        ) : (
          <CloseOutForm visit={visit} procedure={procedure} handle={handle} />
        )
      ) : null}
    </FieldFrame>
  )
}
