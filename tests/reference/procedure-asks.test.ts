import { beadConditions } from '@almanac/records/bead-condition'
import { type JobKind, jobKinds } from '@almanac/records/job-kind'
import { emergencies, procedureAsks, type VisitAskId } from '@almanac/records/procedure-ask'
import { procedureSteps } from '@almanac/records/procedure-step'
import { requiredChecks } from '@almanac/service-rules/close-out/check-steps'
import { type Answers, checksFrom, measurementsFrom } from '@almanac/service-rules/close-out/record-from-answers'
import { procedureForJob } from '@almanac/softener/procedure/procedure-for-job'
import type { Ask, Procedure } from '@almanac/softener/procedure/procedure-types'
import { expect, test } from 'vitest'
import { procedureContexts } from '../support/procedure-contexts.ts'
import { ENGLISH } from '../support/procedure-words.ts'

const ALL: { kind: JobKind; procedure: Procedure }[] = procedureContexts().flatMap((context) =>
  jobKinds.flatMap((kind) =>
    (kind === 'emergency' ? emergencies : [null]).map((emergency) => ({
      kind,
      procedure: procedureForJob(kind, { ...context, emergency }, ENGLISH),
    })),
  ),
)
const asksOf = (procedure: Procedure) => procedure.steps.flatMap((step) => step.asks)

/** The harmless answer, which every list of choices has first; numbers as a sound softener gives them. */
function harmless(ask: Ask): { text: string; value: number | null } {
  if (ask.kind === 'confirm') return { text: 'yes', value: null }
  return ask.kind === 'choice' ? { text: ask.choices[0]?.value ?? '', value: null } : { text: '0.5', value: 0.5 }
}
const answersTo = (asks: readonly Ask[]): Answers =>
  Object.fromEntries(asks.map((ask) => [ask.id, { ...harmless(ask), unit: ask.unit, at: '2026-12-03T18:00:00.000Z' }]))
const confirmed = (answers: Answers, short: boolean) =>
  checksFrom(answers, short).flatMap((check) => (check.confirmed ? [check.stepId] : []))

test('each id that is declared is a step or a question of some procedure, and none is asked twice in one', () => {
  expect([...new Set(ALL.flatMap(({ procedure }) => procedure.steps.map((step) => step.id)))].sort()).toEqual([...procedureSteps].sort())
  expect([...new Set(ALL.flatMap(({ procedure }) => asksOf(procedure).map((ask) => ask.id)))].sort()).toEqual([...procedureAsks].sort())
  for (const { procedure } of ALL) {
    const ids = asksOf(procedure).map((ask) => ask.id)
    expect(new Set(ids).size).toBe(ids.length)
  }
})

test('a rebed answered through has every safety check, whatever is known of the site, and each of them hangs on an answer', () => {
  const needed = requiredChecks('done', 'rebed', true)
  for (const { procedure } of ALL.filter((one) => one.kind === 'rebed')) {
    const answers = answersTo(asksOf(procedure))
    expect(confirmed(answers, false)).toEqual(expect.arrayContaining(needed))
    for (const check of needed) {
      const gives = asksOf(procedure).filter((ask) => {
        const { [ask.id as VisitAskId]: _, ...others } = answers
        return !confirmed(others, false).includes(check)
      })
      expect(gives, check).toHaveLength(1)
      // What counts for safety cannot be passed over.
      expect(gives[0]?.required, check).toBe(true)
    }
  }
})

test.each(jobKinds.filter((kind) => kind !== 'rebed'))('%s answered through has its safety checks', (kind) => {
  const needed = requiredChecks('done', kind, false)
  for (const { procedure } of ALL.filter((one) => one.kind === kind))
    expect(confirmed(answersTo(asksOf(procedure)), true)).toEqual(expect.arrayContaining(needed))
})

test('a water test is asked where it is measured: hardness raw and at the outlet, wherever there is a test step', () => {
  // An emergency may have no water to test, a delivery touches none, and a new softener has no outlet before it is there.
  for (const { kind, procedure } of ALL.filter((one) => !['emergency', 'delivery'].includes(one.kind))) {
    const kinds = measurementsFrom(answersTo(asksOf(procedure))).map((one) => one.kind)
    expect(kinds, kind).toEqual(expect.arrayContaining(['rawHardnessGpg', 'outletHardnessGpg']))
  }
})

test.each(['old-beads', 'beads'] as const)('%s offers every condition of beads', (id) => {
  const ask = ALL.flatMap(({ procedure }) => asksOf(procedure)).find((one) => one.id === id)
  expect(ask?.choices.map((one) => one.value).filter((value) => value !== 'not-seen')).toEqual([...beadConditions])
})
