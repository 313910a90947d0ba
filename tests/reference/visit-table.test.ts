import { type JobKind, jobKinds } from '@almanac/records/job-kind'
import { type EmergencyKind, emergencies } from '@almanac/records/procedure-ask'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import { stopOfAnswer, type VisitStop, visitStops } from '@almanac/records/visit-stop'
import type { CloseOutRecord } from '@almanac/service-rules/close-out/close-out-form'
import { missingForCloseOut } from '@almanac/service-rules/close-out/completeness'
import { type Answers, checksFrom, measurementsFrom } from '@almanac/service-rules/close-out/record-from-answers'
import { outcomesAfter, outcomesOfKind, safeEnding, stopsAmong } from '@almanac/service-rules/close-out/safe-ending'
import { procedureForJob } from '@almanac/softener/procedure/procedure-for-job'
import type { Ask, Procedure } from '@almanac/softener/procedure/procedure-types'
import { wordsIn } from '@almanac/words/words-in'
import { describe, expect, test } from 'vitest'
import { procedureContexts } from '../support/procedure-contexts.ts'
import { ENGLISH } from '../support/procedure-words.ts'

// Kind of job × step × answer × outcome, walked whole: every answer leads on or to a safe ending, every ending to an outcome whose demands can be met.
const AT = '2026-12-03T18:00:00.000Z'
const context = {
  ...{ outletLimitGpg: 1, display: { locale: 'en-US', unitSystem: 'us' as const }, words: wordsIn('en-US', 'lacking') },
  ...{ outcomes: wordsIn('en-US', 'outcome'), stops: wordsIn('en-US', 'stop') },
  ...{ amounts: wordsIn('en-US', 'amount'), amountNames: wordsIn('en-US', 'amountName') },
}
const given = (text: string, value: number | null = null, unit: string | null = null) => ({ text, value, unit, at: AT })
/** As a sound softener answers; numbers that every rule takes for usual. */
function harmless({ id, kind, choices, unit }: Ask, emergency: string | null = null) {
  if (kind === 'number') return id === 'pressure-psi' ? given('60', 60, unit) : given('0.5', 0.5, unit)
  return given(kind === 'confirm' ? 'yes' : id === 'happened' ? (emergency ?? '') : (choices[0]?.value ?? ''))
}
const textsOf = (answers: Answers) => Object.fromEntries(Object.entries(answers).map(([ask, answer]) => [ask, answer?.text ?? '']))

/** Every fifth site: pipe, power, bypass, gravel and source each way, in a quarter of the time. */
const SITES = procedureContexts().filter((_, i) => i % 5 === 0)
/** Every procedure of a kind, whatever is known of the site and whatever happened. */
const proceduresOf = (kind: JobKind): { steps: Procedure['steps']; emergency: EmergencyKind | null }[] =>
  SITES.flatMap((site) =>
    (kind === 'emergency' ? emergencies : [null]).map((emergency) => ({
      ...{ emergency, steps: procedureForJob(kind, { ...site, emergency }, ENGLISH).steps },
    })),
  )

/** The record that a technician makes of these answers, with all that the closing form asks of this outcome and nothing that a step would have to ask. */
function recordOf(kind: JobKind, outcome: VisitOutcome, answers: Answers): CloseOutRecord {
  const opened = (answers['old-tube-length-in'] ?? answers['old-tank-out']) !== undefined && outcome !== 'left-as-found'
  const fills = outcome === 'done' && (kind === 'rebed' || kind === 'installation' || kind === 'exchange')
  const ends = opened || outcome === 'condemned'
  return {
    ...{ visitId: 'v', jobKind: kind, outcome, workDay: '2026-12-03', startedAt: AT, finishedAt: AT, notes: '' },
    ...{ checks: checksFrom(answers, kind !== 'rebed'), measurements: measurementsFrom(answers) },
    partsUsed: fills ? [{ stockItemId: null, name: 'Resin', quantity: 1, unit: 'resin-bag' }] : [],
    oldBed: ends ? { takenOut: opened, endCause: 'unknown', evidence: '' } : null,
    newBed: fills
      ? { resinKind: 'gel-8', volumeFt3: 1.5, enteredVolume: { value: 1.5, unit: 'ft3' }, gravelLb: 18, tubeCutIn: 52.5 }
      : null,
    ...{ reason: outcome === 'done' ? '' : 'as found', hardnessReason: '' },
  }
}
const lacks = (kind: JobKind, outcome: VisitOutcome, answers: Answers) => missingForCloseOut(recordOf(kind, outcome, answers), context)
/** What the closing form asks itself for an outcome other than "done". */
const closingTicks = (outcome: VisitOutcome): Answers =>
  outcome === 'bed-not-at-fault'
    ? { 'in-service': given('yes'), 'customer-told': given('yes') }
    : { 'left-in-bypass': given('yes'), 'customer-told': given('yes') }

/** By hand, from what each kind's steps are for (common practice, no source): the stops that a crew must be able to say. */
const REFERRALS: VisitStop[] = visitStops.filter((stop) => stop.startsWith('stop-case/'))
const RUNS: VisitStop[] = ['drain-clear/beads', 'brine-draw/none']
const BY_HAND: Record<JobKind, VisitStop[]> = {
  rebed: [...REFERRALS, 'bypass-holds/cannot', 'tank-condition/cracked', 'tank-condition/thread', ...RUNS],
  'annual-visit': [...REFERRALS, ...RUNS],
  cleaning: [...REFERRALS, ...RUNS],
  inspection: REFERRALS,
  repair: [...REFERRALS, 'fault/distributor', ...RUNS],
  'warranty-return': [...REFERRALS, 'fault/distributor', ...RUNS],
  installation: [...REFERRALS, 'bypass-holds/cannot', ...RUNS],
  exchange: [...REFERRALS, 'bypass-holds/cannot', ...RUNS],
  delivery: [],
  emergency: [...REFERRALS, 'burst-from/tank', 'left-as/in-bypass'],
}

describe.each(jobKinds)('%s', (kind) => {
  test('says the stops it must, each leads to a safe ending, and each ending to an outcome whose demands are met on that page', () => {
    const met = new Set<VisitStop>()
    for (const { steps, emergency } of proceduresOf(kind)) {
      let answers: Answers = {}
      for (const step of steps) {
        for (const ask of step.asks) {
          for (const { value } of ask.choices) {
            const stop = stopOfAnswer(ask.id, value)
            const now: Answers = { ...answers, [ask.id]: given(value) }
            expect(stopsAmong(textsOf(now))).toEqual(stop ? [stop] : [])
            if (!stop) {
              expect(outcomesAfter(kind, textsOf(now))).toContain('done')
              continue
            }
            met.add(stop)
            const ending = safeEnding(stop, kind, textsOf(now))
            expect(ending.outcomes.length, `${step.id} ${stop}`).toBeGreaterThan(0)
            expect(ending.outcomes).not.toContain('done')
            expect(ending.steps.at(-1)).toBe('customer-told')
            const safe: Answers = { ...now, ...Object.fromEntries(ending.steps.map((one) => [one, given('yes')])) }
            for (const outcome of ending.outcomes) expect(lacks(kind, outcome, safe), `${step.id} ${stop} ${outcome}`).toEqual([])
            const refused = outcomesOfKind[kind].filter((one) => !ending.outcomes.includes(one))
            expect(refused).toContain('done')
            for (const outcome of refused)
              expect(lacks(kind, outcome, safe)).toEqual([expect.stringMatching(/^You answered: .* can’t end as “/)])
          }
        }
        answers = { ...answers, ...Object.fromEntries(step.asks.map((ask) => [ask.id, harmless(ask, emergency)])) }
      }
    }
    expect([...met].sort()).toEqual([...BY_HAND[kind]].sort())
  })

  test('reaches each of its outcomes, and no other', () => {
    for (const { steps, emergency } of proceduresOf(kind)) {
      const all: Answers = Object.fromEntries(steps.flatMap((step) => step.asks).map((ask) => [ask.id, harmless(ask, emergency)]))
      expect(lacks(kind, 'done', all)).toEqual([])
      for (const outcome of outcomesOfKind[kind].filter((one) => one !== 'done'))
        expect(lacks(kind, outcome, closingTicks(outcome)), outcome).toEqual([])
    }
    const never = (['bed-not-at-fault', 'condemned', 'made-safe'] as const).filter((one) => !outcomesOfKind[kind].includes(one))
    for (const outcome of never)
      expect(lacks(kind, outcome, closingTicks(outcome))).toEqual([expect.stringMatching(/^This kind of job can’t end/)])
    expect(never).toEqual(
      kind === 'delivery'
        ? ['bed-not-at-fault', 'condemned', 'made-safe']
        : kind === 'installation'
          ? ['bed-not-at-fault', 'condemned']
          : [],
    )
  })
})

test('every stop is met by some kind', () => {
  expect([...new Set(jobKinds.flatMap((kind) => BY_HAND[kind]))].sort()).toEqual([...visitStops].sort())
})

// What is open decides what leaves the house safe: common practice, no source.
describe('the safe ending of what is open at that moment', () => {
  const until = (id: string) => {
    const { steps } = procedureForJob('rebed', { display: context.display, diameterIn: 10, heightIn: 54, metalPipe: true }, ENGLISH)
    const asks = steps
      .slice(
        0,
        steps.findIndex((step) => step.id === id),
      )
      .flatMap((step) => step.asks)
    return Object.fromEntries(asks.map((ask) => [ask.id, harmless(ask).text]))
  }
  test.each([
    ['stop-and-refer', 'stop-case', 'crawl-space', 'untouched', ['put-back', 'customer-told'], ['left-as-found']],
    [
      'stop-and-refer',
      'stop-case',
      'cracked-tank',
      'untouched',
      ['left-in-bypass', 'pressure-off-again', 'stop-photographed', 'customer-told'],
      ['condemned', 'made-safe'],
    ],
    ['prove-bypass', 'bypass-holds', 'cannot', 'untouched', ['put-back', 'heater-on', 'customer-told'], ['left-as-found']],
    [
      'inspect-tank',
      'tank-condition',
      'cracked',
      'open',
      ['left-in-bypass', 'lines-plugged', 'stop-photographed', 'heater-on', 'customer-told'],
      ['condemned', 'made-safe'],
    ],
    [
      'run-clear',
      'drain-clear',
      'beads',
      'running',
      ['left-in-bypass', 'pressure-off-again', 'stop-photographed', 'heater-on', 'customer-told'],
      ['made-safe'],
    ],
    ['check-brine', 'brine-draw', 'none', 'running', ['left-in-bypass', 'pressure-off-again', 'heater-on', 'customer-told'], ['made-safe']],
  ] as const)('%s: %s %s', (step, ask, answer, opening, steps, outcomes) => {
    const stop = stopOfAnswer(ask, answer)
    if (!stop) throw new Error('no stop')
    const ending = safeEnding(stop, 'rebed', { ...until(step), [ask]: answer })
    expect(ending).toEqual({ stop, opening, steps, outcomes })
  })
  test('a reason to refer found with the valve off is made safe, never left as found', () => {
    const answers = { ...until('drain-tank'), 'stop-case': 'asbestos' }
    expect(safeEnding('stop-case/asbestos', 'rebed', answers)).toMatchObject({ opening: 'open', outcomes: ['made-safe'] })
  })
  test('two stops that end differently still have an end', () => {
    expect(outcomesAfter('annual-visit', { 'stop-case': 'permit', 'brine-draw': 'none' })).toEqual(['made-safe'])
  })
  test('where water burst from counts only while it is a burst', () => {
    expect(stopsAmong({ happened: 'beads', 'burst-from': 'tank' })).toEqual([])
    expect(stopsAmong({ happened: 'burst', 'burst-from': 'tank' })).toEqual(['burst-from/tank'])
  })
})
