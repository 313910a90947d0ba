import type { PhotographKind } from '@almanac/records/picture-kind'
import type { ProcedureStepId } from '@almanac/records/procedure-step'

/** What is photographed at which step; at a visit's end all kinds are asked for, whatever its steps were. */
export const photographsOfStep: Readonly<Partial<Record<ProcedureStepId, readonly PhotographKind[]>>> = {
  'record-as-found': ['label', 'as-found'],
  'what-happened': ['as-found'],
  'test-water': ['label', 'as-found'],
  'take-out-media': ['old-bed'],
  'look-at-beads': ['old-bed'],
  repair: ['as-found', 'as-left'],
  'hand-over': ['as-left'],
  'leave-safe': ['as-left'],
}
