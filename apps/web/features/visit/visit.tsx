'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { FieldFrame } from '@almanac/ui/field-frame'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { closeOutWaits } from '@/client/field/as-done'
import { useField } from '@/client/field/field-home'
import { KeptNote, useWaitingWords, WaitingNote } from '@/client/field/waiting-note'
import { LatePicturesNote } from '@/client/photographs/late-pictures-note'
import { Piece, piece, useBrought } from '@/client/piece'
import { useSession } from '@/client/providers'
import { asFound } from './as-found.ts'
import type { Draft } from './draft.ts'
import { entriesOf } from './earlier-draft.ts'
import { CARD } from './late-card.ts'
import { CLOSE_OUT, DRAWING, PANEL, PHOTOGRAPHS, SAFE_ENDING, SEND_REPORT } from './late-pieces.ts'
import { procedureOf, useProcedureWords } from './procedure-of.ts'
import { type StandingStop, standingStop } from './standing-stop.ts'
import { type DraftHandle, useDraft } from './use-draft.ts'
import { useVisit } from './use-visit.ts'
import { VisitClosed } from './visit-closed.tsx'

// What a visit is not at yet, or no longer, comes when it is.
const BRIEF = piece(() => import('./visit-brief.tsx').then((module) => module.VisitBrief))
const AT_WORK = piece(() => import('./visit-at-work.tsx').then((module) => module.VisitAtWork))
const UNSENT = piece(() => import('./unsent-entries.tsx').then((module) => module.UnsentEntries))
const LATER = [AT_WORK, SAFE_ENDING, PANEL, CLOSE_OUT, PHOTOGRAPHS, CARD, DRAWING, SEND_REPORT, UNSENT]

type PartProps = { visit: VisitPage; procedure: Procedure; handle: DraftHandle; stop: StandingStop | null }

/** Whether this visit was begun here. The draft is the job's: what an earlier visit left in it is gone on with, but each visit is begun anew. */
const begunHere = ({ startedAt, visitId }: Draft, visit: VisitPage): boolean =>
  startedAt !== null && (visitId === null || visitId === visit.visitId)

/** What the visit is at: closed, not begun, in its steps, or at its end. */
function VisitPart({ visit, procedure, handle, stop }: PartProps) {
  const { outbox, write } = useField()
  const words = useWords('visit')
  const { draft, change, clear, written } = handle
  const { visitId, jobId, siteLabel } = visit
  if (visit.state === 'closed') {
    const waits = closeOutWaits(visitId, outbox)
    const left = !waits && begunHere(draft, visit) && entriesOf(draft) > 0
    return (
      <>
        <VisitClosed visit={visit} waits={waits} />
        {left ? <Piece of={UNSENT} give={{ visit, procedure, handle }} /> : null}
      </>
    )
  }
  const start = () => {
    change({ jobId, visitId, startedAt: new Date().toISOString(), startedHere: true })
    void write({ kind: 'start', body: { visitId }, visitId, siteLabel })
  }
  if (!begunHere(draft, visit)) {
    const carried = draft.startedAt === null ? 0 : entriesOf(draft)
    return (
      <>
        {visit.state === 'called-off' ? <Notice kind="mind">{words('calledOff')}</Notice> : null}
        {carried > 0 ? <Notice kind="mind">{words('carriedOver', { count: carried })}</Notice> : null}
        <Piece
          of={BRIEF}
          give={{
            visit,
            procedure,
            onStart: start,
            onResume: () => change({ jobId, visitId, startedAt: new Date().toISOString(), startedHere: false }),
          }}
        />
      </>
    )
  }
  const takeBack = async () => {
    await written()
    clear()
    await write({ kind: 'undo-start', body: { visitId }, visitId, siteLabel }, jobId)
  }
  return (
    <>
      {visit.state === 'called-off' ? <Notice kind="mind">{words('calledOffAtWork')}</Notice> : null}
      <Piece
        of={AT_WORK}
        give={{ visit, procedure, handle, stop, onTakeBack: draft.startedHere && entriesOf(draft) === 0 ? () => void takeBack() : null }}
      />
    </>
  )
}

/** One visit on the tablet: the brief, then the procedure step by step, then the closing form. All of it works without the server. */
export function Visit({ visitId }: { visitId: string }) {
  const { me, figures } = useSession()
  const { visit: recorded, keptAt, error, isPending, isFetching, refetch } = useVisit(visitId)
  const handle = useDraft(recorded ?? null)
  const { draft, ready, kept } = handle
  const visit = recorded && asFound(recorded, draft.answers)
  const words = useWords('visit')
  const kinds = useWords('jobKind')
  const waiting = useWaitingWords()
  useBrought(LATER)
  const entries = entriesOf(draft)
  const saved = !kept ? words('cannotKeep') : entries > 0 ? words('saved', { count: entries }) : ''
  const status = waiting || (visit?.state === 'closed' && entries === 0 ? words('sent') : saved)
  const spoken = useProcedureWords()
  const procedure = visit ? procedureOf(visit, me.company, figures, spoken, draft.answers) : null
  const stop =
    visit && procedure && visit.state !== 'closed' && begunHere(draft, visit) ? standingStop(visit, procedure, draft.answers) : null
  const back = (
    <Link href="/today" className="-ml-2 inline-flex min-h-control min-w-12 items-center px-2 underline underline-offset-4">
      {words('today')}
    </Link>
  )
  return (
    <FieldFrame
      title={visit ? words('title', { site: visit.siteLabel, kind: kinds(visit.kind).toLowerCase() }) : words('untitled')}
      status={status}
      back={back}
      stopped={stop !== null}
    >
      <WaitingNote />
      <LatePicturesNote />
      {visit ? <KeptNote at={keptAt} /> : null}
      {error ? <Problem happened={readFailure(error).message} onRetry={() => void refetch()} retrying={isFetching} /> : null}
      {isPending || (visit && !ready) ? <Skeleton lines={8} label={words('loading')} /> : null}
      {visit && procedure && ready ? <VisitPart visit={visit} procedure={procedure} handle={handle} stop={stop} /> : null}
    </FieldFrame>
  )
}
