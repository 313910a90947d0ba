import type { CloseOutInput } from '@almanac/contract/visits'
import { type BeadCondition, beadConditions } from '@almanac/records/bead-condition'
import { oneOf } from '@almanac/records/choices'
import { beadAsks } from '@almanac/records/procedure-ask'

/** What tablets wrote before there was one set of words: a visit begun then may be sent now. */
const EARLIER: Readonly<Record<string, BeadCondition | undefined>> = { soft: 'some-soft', iron: 'iron-fouled', short: 'resin-missing' }

/** What the crew saw of the beads, from the step's note; null when nobody looked. */
export function beadConditionOf(record: CloseOutInput): BeadCondition | null {
  const answer = record.checks.find((check) => beadAsks.some((ask) => ask === check.stepId))?.note
  if (answer === undefined) return null
  return oneOf(beadConditions, answer) ?? EARLIER[answer] ?? null
}
