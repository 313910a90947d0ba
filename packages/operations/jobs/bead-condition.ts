import type { CloseOutInput } from '@almanac/contract/visits'
import type { BeadCondition } from '@almanac/records/bead-condition'

/** What the crew saw of the old beads, from the step's note; null when nobody looked. */
export function beadConditionOf(record: CloseOutInput): BeadCondition | null {
  const answer = record.checks.find((check) => check.stepId === 'old-beads' || check.stepId === 'beads')?.note
  if (answer === 'firm') return 'firm'
  if (answer === 'soft') return 'some-soft'
  if (answer === 'mushy') return 'mushy'
  return answer === 'broken' ? 'broken' : null
}
