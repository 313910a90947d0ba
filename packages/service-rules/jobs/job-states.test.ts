import { jobKinds } from '@almanac/records/job-kind'
import { isOpenJob, type JobState, jobStates } from '@almanac/records/job-state'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { describe, expect, test } from 'vitest'
import { jobKindFacts, usualRebedMinutes } from './job-kinds.ts'
import { type JobEvent, jobEvents, nextJobState, stateAfterFact } from './job-states.ts'
import { bedEffectOf, outcomeFacts } from './visit-outcomes.ts'

/** Every step that is allowed; whatever is not listed here must be refused. Written from the trade's words for a job, not from the table. */
const allowed: Record<string, JobState> = {
  'proposed book': 'booked',
  'proposed hand-over': 'closed',
  'proposed hold': 'held',
  'proposed call-off': 'called-off',
  'booked move': 'booked',
  'booked unbook': 'proposed',
  'booked start': 'under-way',
  'booked close': 'closed',
  'booked return': 'proposed',
  'booked hold': 'held',
  'booked call-off': 'called-off',
  'under-way unstart': 'booked',
  'under-way close': 'closed',
  'under-way return': 'proposed',
  'held release': 'proposed',
  'held call-off': 'called-off',
  'called-off revive': 'proposed',
}

describe.each(jobStates)('a job that is %s', (state) => {
  test.each(jobEvents)('%s', (event: JobEvent) => {
    const step = nextJobState(state, event)
    const expected = allowed[`${state} ${event}`]
    if (expected) expect(step).toEqual({ ok: true, state: expected })
    else expect(step).toEqual({ ok: false, reason: expect.stringMatching(/^[A-Z].{15,}\.$/) })
  })
})

function reachable(from: JobState): Set<JobState> {
  const seen = new Set<JobState>([from])
  for (const state of seen) {
    for (const event of jobEvents) {
      const step = nextJobState(state, event)
      if (step.ok) seen.add(step.state)
    }
  }
  return seen
}

test('every state can be reached from a proposal, and every job but a closed one can still be closed', () => {
  expect([...reachable('proposed')].sort()).toEqual([...jobStates].sort())
  for (const state of jobStates) expect(reachable(state).has('closed')).toBe(true)
  expect([...reachable('closed')]).toEqual(['closed'])
})

test('open is whatever is still to do', () => {
  expect(jobStates.filter(isOpenJob)).toEqual(['proposed', 'booked', 'under-way', 'held'])
})

// From the trade: who did the work did it; but a job that somebody else closed, or is at, is not ended over their head.
test.each([
  ['proposed', 'closed', 'proposed'],
  ['booked', 'closed', 'booked'],
  ['held', 'closed', 'held'],
  ['called-off', 'closed', 'called-off'],
  ['closed', null, null],
  ['under-way', null, null],
] as const)('a visit that was called off and done all the same, of a job that is %s', (state, closed, returned) => {
  expect([stateAfterFact(state, 'close'), stateAfterFact(state, 'return')]).toEqual([closed, returned])
})

test('each outcome can end a booked or started visit', () => {
  for (const outcome of visitOutcomes) {
    for (const state of ['booked', 'under-way'] as const) expect(nextJobState(state, outcomeFacts[outcome].jobEvent).ok).toBe(true)
  }
})

test('common practice: two people for a rebed of 1.5 to 3 hours, half a day or more from 21 in up', () => {
  expect(jobKindFacts.rebed.usualCrew).toBe(2)
  for (const diameterIn of [null, 8, 10, 14, 18]) {
    expect(usualRebedMinutes(diameterIn)).toBeGreaterThanOrEqual(90)
    expect(usualRebedMinutes(diameterIn)).toBeLessThanOrEqual(180)
  }
  for (const diameterIn of [21, 24, 30]) expect(usualRebedMinutes(diameterIn)).toBeGreaterThanOrEqual(240)
  for (const kind of jobKinds) expect(jobKindFacts[kind].usualMinutes).toBeGreaterThan(0)
})

describe('what an outcome does to the bed', () => {
  test.each([
    ['done', 'rebed', true, true, 'ends-and-new-begins'],
    ['done', 'installation', false, true, 'new-begins'],
    ['done', 'installation', true, true, 'ends-and-new-begins'],
    ['done', 'emergency', true, true, 'ends-and-new-begins'],
    ['done', 'annual-visit', false, false, 'seen-in-service'],
    ['done', 'delivery', false, false, 'nothing-known'],
    ['made-safe', 'rebed', false, false, 'nothing-known'],
    ['made-safe', 'rebed', true, false, 'ends-without-successor'],
    ['no-access', 'rebed', false, false, 'nothing-known'],
    ['bed-not-at-fault', 'rebed', false, false, 'seen-in-service'],
    ['condemned', 'rebed', true, false, 'ends-without-successor'],
    ['condemned', 'annual-visit', false, false, 'ends-without-successor'],
  ] as const)('%s on a %s, out %s, in %s: %s', (outcome, kind, out, filled, effect) =>
    expect(bedEffectOf(outcome, kind, out, filled)).toBe(effect),
  )
})
