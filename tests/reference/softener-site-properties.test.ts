import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { flowWords } from '@almanac/softener/flow/flow-words'
import { backwashWords } from '@almanac/softener/hydraulics/backwash-words'
import { settingsCard } from '@almanac/softener/setting/settings-card'
import { evaluateSite } from '@almanac/softener/site/evaluate-site'
import type { SiteInput } from '@almanac/softener/site/site-input'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evaluatedHouse, US_WORDS as US } from '../support/house-site.ts'
import { CARD } from '../support/speaking.ts'

const seed = Number(process.env.FC_SEED ?? 20_260_103)
console.info(`site properties: fast-check seed ${seed} (set FC_SEED to change it)`)
const figures = { ...USUAL_FIGURES, saltPriceMinorPerLb: 20, waterPriceMinorPerGal: 1 }
const evaluated = (change: Partial<SiteInput> = {}) => evaluatedHouse(figures, change)

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const wild = fc.oneof(
  fc.constant(null),
  fc.double(),
  between(0, 100),
  fc.constantFrom(0, -1, 1e-9, 1e12, Number.NaN, Number.POSITIVE_INFINITY),
)
/** Mostly what a record may say, now and then anything. */
const mostly = (min: number, max: number) =>
  fc.oneof({ weight: 12, arbitrary: between(min, max) }, { weight: 6, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: wild })
/** Nearly always known. */
const nearly = (min: number, max: number) => fc.oneof({ weight: 20, arbitrary: between(min, max) }, { weight: 1, arbitrary: wild })
const anySite = fc.record({
  ...{ diameterIn: nearly(6, 24), heightIn: nearly(30, 80), resinFt3: mostly(0.3, 5), nominalGrains: mostly(8000, 200_000) },
  ...{ gravelLb: mostly(0, 60), resinKind: fc.constantFrom('gel-8' as const, 'gel-10' as const, 'fine-mesh' as const, null) },
  arrangement: fc.constantFrom('single' as const, 'twin-parallel' as const, 'twin-alternating' as const),
  ...{ bedAgeYears: mostly(0, 20), oldTubeLengthIn: mostly(30, 70), tubeOutsideDiameterIn: mostly(0.8, 2), openingIn: mostly(2.5, 4) },
  access: fc.constantFrom('level' as const, 'stairs' as const, 'tight' as const, null),
  ...{ hardnessGpg: nearly(0, 60), ironMgL: mostly(0, 4), manganeseMgL: mostly(0, 1), dissolvedSolidsMgL: mostly(50, 4000) },
  ...{ coldestF: mostly(32, 55), warmestF: mostly(50, 90), usualF: mostly(40, 70) },
  ...{ people: mostly(1, 8), measuredGalDay: mostly(20, 900), fixtureUnits: mostly(1, 150) },
  demandCurve: fc.constantFrom('ipc' as const, 'nspc' as const),
  expansionModel: fc.constantFrom('richardson-zaki' as const, 'wen-yu' as const),
  ...{ backwashGpm: mostly(0.5, 12), controlsGpm: fc.constantFrom([], [1.5, 2, 2.4]) },
  control: fc.constantFrom('meter' as const, 'timer' as const, null),
  ...{
    refillGpm: mostly(0.1, 2),
    salt: fc.constantFrom('NaCl' as const, 'KCl' as const),
    wantedLbFt3: mostly(4, 20),
    mostLeakageMgL: mostly(1, 50),
  },
})

/** Finite, not below zero but for rounding, and no text that reads NaN or undefined. */
function expectSound(value: unknown, path: string): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value) || value < -1e-9) throw new Error(`${path} is ${value}`)
  } else if (typeof value === 'string') {
    if (/NaN|undefined|Infinity/.test(value)) throw new Error(`${path} reads "${value}"`)
  } else if (value !== null && typeof value === 'object') {
    for (const [key, inner] of Object.entries(value)) expectSound(inner, `${path}.${key}`)
  }
}

describe('any input gives sound figures and words, or a sentence', () => {
  it('evaluation, card, backwash and flow in words', () => {
    let whole = 0
    fc.assert(
      fc.property(anySite, fc.constantFrom('us' as const, 'metric' as const), (site, unitSystem) => {
        const found = evaluateSite(site, figures, CARD)
        expectSound(found, 'evaluation')
        if ('reason' in found) {
          expect(found.reason).toMatch(/\.$/)
          return
        }
        const words = { ...US, display: { locale: 'en-US', unitSystem } }
        const said = [settingsCard(found, site, figures, words), backwashWords(found, site, figures, words), flowWords(found, site, words)]
        for (const part of said) {
          expectSound(part, 'words')
          if ('reason' in part) expect(part.reason).toMatch(/\.$/)
        }
        if (said.every((part) => !('reason' in part))) whole += 1
      }),
      { seed, numRuns: 3000 },
    )
    // The check would be hollow if nearly all were refused.
    expect(whole).toBeGreaterThan(100)
  })
})

describe('physics and thrift are monotonic', () => {
  const good = fc.record({
    hardnessGpg: between(3, 50),
    bedAgeYears: between(0, 12),
    coldestF: between(36, 55),
    backwashGpm: between(1, 5),
    salt: fc.constantFrom('NaCl' as const, 'KCl' as const),
    resinKind: fc.constantFrom('gel-8' as const, 'gel-10' as const, 'fine-mesh' as const),
    expansionModel: fc.constantFrom('richardson-zaki' as const, 'wen-yu' as const),
  })
  const setting = (change: Partial<SiteInput>) => {
    const found = evaluated(change).setting
    if ('reason' in found) throw new Error(found.reason)
    return found
  }
  it('capacity rises with salt and stays below what salt can do by charge; leakage falls with salt', () => {
    fc.assert(
      fc.property(good, (change) => {
        const { doses } = setting(change)
        doses.forEach((dose, at) => {
          const before = doses[at - 1]
          if (before) {
            expect(dose.capacityGr).toBeGreaterThanOrEqual(before.capacityGr)
            expect(dose.leakageMgL).toBeLessThan(before.leakageMgL)
          }
          // 5,994 gr by charge for a lb of NaCl (derived from atomic weights).
          expect(dose.grPerLb).toBeLessThanOrEqual(5994.5)
        })
      }),
      { seed },
    )
  })
  it('harder water, an older bed and more people shorten the interval', () => {
    fc.assert(
      fc.property(good, between(0.5, 5), (change, more) => {
        const days = (other: Partial<SiteInput>) => {
          const found = setting({ ...change, wantedLbFt3: 8, ...other })
          return found.doses[found.chosen]?.days ?? 0
        }
        const now = days({})
        expect(days({ hardnessGpg: change.hardnessGpg + more })).toBeLessThanOrEqual(now)
        expect(days({ bedAgeYears: change.bedAgeYears + more })).toBeLessThanOrEqual(now)
        expect(days({ people: 4 + more })).toBeLessThanOrEqual(now)
      }),
      { seed },
    )
  })
  it('warmer water expands the bed less and asks for more backwash; cold raises the drop', () => {
    fc.assert(
      fc.property(good, between(0.5, 8), (change, warmer) => {
        const cold = evaluated({ ...change, warmestF: 70 })
        const warm = evaluated({ ...change, warmestF: 70, coldestF: change.coldestF + warmer })
        if ('reason' in cold.backwash || 'reason' in warm.backwash || 'reason' in cold.flow || 'reason' in warm.flow)
          throw new Error('refused')
        expect(warm.backwash.winter.installed?.expansion).toBeLessThanOrEqual(cold.backwash.winter.installed?.expansion ?? 0)
        expect(warm.backwash.winter.rightGpm).toBeGreaterThan(cold.backwash.winter.rightGpm)
        expect(warm.flow.dropAtDemand.clean).toBeLessThan(cold.flow.dropAtDemand.clean)
        expect(cold.flow.dropAtDemand.aged).toBeGreaterThan(cold.flow.dropAtDemand.clean)
      }),
      { seed },
    )
  })
})
