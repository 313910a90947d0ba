import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { type TriageInput, triage } from '@almanac/softener/diagnosis/triage'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { identifyTank } from '@almanac/softener/identify/identify-tank'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DIAGNOSIS, TANK } from '../support/speaking.ts'

const seed = Number(process.env.FC_SEED ?? 20_260_103)
console.info(`which tank and what is wrong, properties: fast-check seed ${seed} (set FC_SEED to change it)`)
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Anything a form may send: missing, absurd, infinite, not a number. */
const wild = fc.oneof(
  fc.constant(null),
  fc.double(),
  between(0, 100),
  fc.constantFrom(0, -1, 1e-9, 1e12, Number.NaN, Number.POSITIVE_INFINITY),
)
const display = fc.constantFrom('us' as const, 'metric' as const)

function expectSound(value: unknown, path = ''): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${path} is ${value}`)
  } else if (typeof value === 'string') {
    if (/NaN|undefined|Infinity/.test(value)) throw new Error(`${path} reads "${value}"`)
  } else if (value !== null && typeof value === 'object') {
    for (const [key, inner] of Object.entries(value)) expectSound(inner, `${path}.${key}`)
  }
}

const clues = fc.record(
  {
    diameterIn: wild,
    circumferenceIn: wild,
    heightIn: wild,
    heightWithValveIn: wild,
    writtenDiameterIn: wild,
    writtenHeightIn: wild,
    nominalGrains: fc.oneof(wild, fc.integer({ min: 8000, max: 400_000 })),
    resinFt3: wild,
    bedDepthIn: wild,
    openingIn: wild,
    jacket: fc.constantFrom(true, false, null),
  },
  { requiredKeys: [] },
)

describe('which tank is it', () => {
  const identify = (some: Parameters<typeof identifyTank>[0]['clues'], unitSystem: 'us' | 'metric' = 'us') => {
    const found = identifyTank({ clues: some, figures: USUAL_FIGURES, ...TANK, display: { locale: 'en-US', unitSystem } })
    if (!found.ok) throw new Error(found.reason)
    return found.value
  }
  it('chances add up to 1 and everything is sound, whatever is typed', () => {
    fc.assert(
      fc.property(clues, display, (some, display) => {
        const found = identify(some, display)
        expectSound(found)
        const total = found.candidates.reduce((sum, one) => sum + one.chance, found.otherChance)
        expect(total).toBeCloseTo(1, 9)
        for (const one of found.candidates) expect(one.kit === null).toBe(one.kitReason !== null)
        for (const one of [...found.problems, ...found.odd]) expect(one.sentence).toMatch(/\.$/)
        for (const one of found.next) {
          expect(one.bits).toBeGreaterThanOrEqual(0)
          expect(one.likeliestAfter).toBeGreaterThanOrEqual((found.candidates[0]?.chance ?? 0) - 1e-6)
          expect(one.likeliestAfter).toBeLessThanOrEqual(1)
        }
      }),
      { seed, numRuns: 150 },
    )
  })
  it('a listed size measured within the errors of a tape ranks first, in any mix that has both across and height', () => {
    const off = between(-1, 1)
    fc.assert(
      fc.property(fc.constantFrom(...USUAL_FIGURES.tanks), off, off, fc.boolean(), (tank, across, height, round) => {
        const measured = round
          ? { circumferenceIn: Math.PI * tank.diameterIn + 0.5 * across }
          : { diameterIn: tank.diameterIn + 0.25 * across }
        const found = identify({ ...measured, heightIn: tank.heightIn + 0.75 * height })
        expect(found.candidates[0]?.id).toBe(`${tank.diameterIn}x${tank.heightIn}`)
      }),
      { seed, numRuns: 80 },
    )
  })
})

const answers = fc.record(
  Object.fromEntries(CHECKS.map((check) => [check.id, fc.constantFrom(...check.answers.map((one) => one.value), '', 'nonsense')])),
  { requiredKeys: [] },
)
const measured = fc.record({ capacityShare: wild, outletGpg: wild, tapGpg: wild, saltShareOfSetting: wild }, { requiredKeys: [] })
const bed = fc.option(fc.record({ chanceFailed: wild, ageYears: wild }))

const find = (told: Omit<TriageInput, keyof typeof DIAGNOSIS>) => triage({ ...told, ...DIAGNOSIS })

describe('what is wrong', () => {
  it('chances add up to 1 and everything is sound, whatever is answered; beads are always the emergency', () => {
    fc.assert(
      fc.property(answers, measured, bed, (some, numbers, known) => {
        const { value, assumptions } = find({ answers: some, measured: numbers, bed: known })
        expectSound({ ...value, assumptions })
        expect(value.causes.reduce((sum, one) => sum + one.chance, 0)).toBeCloseTo(1, 9)
        for (const one of value.causes) expect(one.chance).toBeGreaterThanOrEqual(0)
        for (const sentence of value.problems) expect(sentence).toMatch(/\.$/)
        expect(value.emergency !== null).toBe(some.beads === 'yes')
        if (some.beads === 'yes') expect(value.advice).toMatchObject({ urgency: 'today', jobKind: 'emergency', action: 'rebed' })
        expect(value.advice === null).toBe(value.answered === 0)
      }),
      { seed, numRuns: 400 },
    )
  })
  it('an answer found more often in a cause than on average raises its chance', () => {
    fc.assert(
      fc.property(answers, fc.constantFrom(...CHECKS), fc.nat(), (some, check, pick) => {
        const answer = check.answers[pick % check.answers.length]
        const before = find({ answers: { ...some, [check.id]: '' } }).value
        const after = find({ answers: { ...some, [check.id]: answer?.value ?? '' } }).value
        for (const { cause, chance, contributions } of after.causes) {
          const factor = contributions.find((one) => one.check === check.id)?.factor ?? 1
          const was = before.causes.find((one) => one.cause.id === cause.id)?.chance ?? 0
          if (factor > 1.001) expect(chance).toBeGreaterThan(0)
          expect(Number.isFinite(factor) && was >= 0).toBe(true)
        }
        const best = after.causes.reduce((most, one) => {
          const was = before.causes.find((other) => other.cause.id === one.cause.id)?.chance ?? 0
          return Math.max(most, (answer?.chances[one.cause.id] ?? 0) * Number(one.chance >= was - 1e-12))
        }, 0)
        const highest = Math.max(...Object.values(answer?.chances ?? {}))
        expect(best).toBeCloseTo(highest, 10)
      }),
      { seed, numRuns: 200 },
    )
  })
})
