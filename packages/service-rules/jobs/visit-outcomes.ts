import { type JobKind, renewsBed } from '@almanac/records/job-kind'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { JobEvent } from './job-states.ts'

/** What a close-out does to the bed that was in the tank when the crew came. */
export type BedEffect = 'ends-and-new-begins' | 'ends-without-successor' | 'new-begins' | 'seen-in-service' | 'nothing-known'

export interface OutcomeFacts {
  /** What happens to the job. */
  jobEvent: Extract<JobEvent, 'close' | 'return'>
  /** True where the technician must say in words what was found. */
  needsReason: boolean
}

export const outcomeFacts: Record<VisitOutcome, OutcomeFacts> = {
  done: {
    jobEvent: 'close',
    needsReason: false,
  },
  'made-safe': {
    jobEvent: 'return',
    needsReason: true,
  },
  'left-as-found': {
    jobEvent: 'return',
    needsReason: true,
  },
  'no-access': {
    jobEvent: 'return',
    needsReason: true,
  },
  'bed-not-at-fault': {
    jobEvent: 'close',
    needsReason: true,
  },
  condemned: {
    jobEvent: 'close',
    needsReason: true,
  },
}

/** Kinds of job whose "done" puts a new bed into the tank. */
export function beginsNewBed(kind: JobKind): boolean {
  return renewsBed(kind) || kind === 'installation'
}

/**
 * What a close-out does to the bed. `oldBedTakenOut` matters where the work stopped halfway (made safe) or where a repair or an
 * emergency ended as a rebed: a bed that lies in bags is over, whatever the outcome is called.
 */
export function bedEffectOf(outcome: VisitOutcome, kind: JobKind, oldBedTakenOut: boolean, newBedFilled: boolean): BedEffect {
  if (outcome === 'no-access' || outcome === 'left-as-found') return 'nothing-known'
  if (outcome === 'condemned') return 'ends-without-successor'
  if (outcome === 'bed-not-at-fault') return 'seen-in-service'
  if (newBedFilled) return kind === 'installation' && !oldBedTakenOut ? 'new-begins' : 'ends-and-new-begins'
  if (oldBedTakenOut) return 'ends-without-successor'
  // Left in bypass: the bed is there, but nobody saw it work.
  if (outcome === 'made-safe') return 'nothing-known'
  return kind === 'delivery' || kind === 'installation' ? 'nothing-known' : 'seen-in-service'
}
