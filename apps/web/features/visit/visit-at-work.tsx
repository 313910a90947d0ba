'use client'
import type { VisitPage } from '@almanac/contract/visits'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Piece } from '@/client/piece'
import { CLOSE_OUT, SAFE_ENDING } from './late-pieces.ts'
import { ProcedureSteps } from './procedure-steps.tsx'
import type { StandingStop } from './standing-stop.ts'
import type { DraftHandle } from './use-draft.ts'
import { VisitBar } from './visit-bar.tsx'

type Props = {
  visit: VisitPage
  procedure: Procedure
  handle: DraftHandle
  stop: StandingStop | null
  /** Takes the start back; null once something was entered. */
  onTakeBack: (() => void) | null
}

/** A visit under way: its step, the safe ending that an answer led to, or the closing form; below them what is a touch away. */
export function VisitAtWork({ visit, procedure, handle, stop, onTakeBack }: Props) {
  const inSteps = handle.draft.step < procedure.steps.length
  return (
    <>
      {stop && inSteps ? (
        <Piece of={SAFE_ENDING} give={{ visitId: visit.visitId, stop, steps: procedure.steps.length, handle }} />
      ) : inSteps ? (
        <ProcedureSteps procedure={procedure} handle={handle} visit={visit} onTakeBack={onTakeBack} />
      ) : (
        <Piece of={CLOSE_OUT} give={{ visit, procedure, handle }} />
      )}
      <VisitBar visit={visit} procedure={procedure} handle={handle} stopped={stop !== null && inSteps} />
    </>
  )
}
