import { drawBed } from '@almanac/softener/drawing/bed-drawing'
import { svgPath } from '@almanac/softener/drawing/svg-path'
import { backwashFluxForExpansion, beadsOf, bedExpansion } from '@almanac/softener/hydraulics/bed-expansion'
import { bedPressureDropPsi } from '@almanac/softener/hydraulics/pressure-drop'
import { waterAt } from '@almanac/softener/hydraulics/water-state'
import { planBags } from '@almanac/softener/kit/bag-plan'
import { rebedKit } from '@almanac/softener/kit/rebed-kit'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import { RESIN_KINDS } from '@almanac/softener/resin/resin-kinds'
import { capacityKgrFt3, stoichiometricGrPerLb } from '@almanac/softener/water/capacity'
import { CAPACITY_CURVES } from '@almanac/softener/water/capacity-curves'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ENGLISH } from '../support/procedure-words.ts'
import { SPEAKING } from '../support/speaking.ts'

const seed = Number(process.env.FC_SEED ?? 20_260_102)
console.info(`softener properties: fast-check seed ${seed} (set FC_SEED to change it)`)
const kindId = fc.constantFrom('gel-8' as const, 'gel-10' as const, 'fine-mesh' as const)
const model = fc.constantFrom('richardson-zaki' as const, 'wen-yu' as const)
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('physics is monotonic', () => {
  it('pressure drop rises with flow, with cold and with depth', () => {
    fc.assert(
      fc.property(kindId, between(0, 40), between(0.1, 20), between(1, 15), between(1, 60), (id, celsius, flux, warmer, depth) => {
        const beads = beadsOf(RESIN_KINDS[id])
        const drop = bedPressureDropPsi(beads, waterAt(celsius), flux, depth)
        expect(bedPressureDropPsi(beads, waterAt(celsius), flux * 1.1, depth)).toBeGreaterThan(drop)
        expect(bedPressureDropPsi(beads, waterAt(celsius + warmer), flux, depth)).toBeLessThan(drop)
        expect(bedPressureDropPsi(beads, waterAt(celsius), flux, depth * 1.1)).toBeGreaterThan(drop)
      }),
      { seed },
    )
  })
  it('expansion rises with flow and falls with warmth', () => {
    fc.assert(
      fc.property(kindId, model, between(0, 40), between(0.1, 20), between(1, 15), (id, which, celsius, flux, warmer) => {
        const beads = beadsOf(RESIN_KINDS[id])
        const grown = bedExpansion(beads, waterAt(celsius), flux, which)
        expect(grown).toBeGreaterThanOrEqual(0)
        expect(bedExpansion(beads, waterAt(celsius), flux * 1.1, which)).toBeGreaterThanOrEqual(grown)
        expect(bedExpansion(beads, waterAt(celsius + warmer), flux, which)).toBeLessThanOrEqual(grown)
      }),
      { seed },
    )
  })
  it('the backwash for an expansion gives that expansion', () => {
    fc.assert(
      fc.property(kindId, model, between(0, 40), between(0.05, 1.5), (id, which, celsius, wanted) => {
        const beads = beadsOf(RESIN_KINDS[id])
        const flux = backwashFluxForExpansion(beads, waterAt(celsius), wanted, which)
        expect(bedExpansion(beads, waterAt(celsius), flux, which)).toBeCloseTo(wanted, 5)
      }),
      { seed },
    )
  })
  it('capacity rises with salt and never passes the stoichiometric limit', () => {
    const curve = fc.constantFrom(...Object.values(CAPACITY_CURVES))
    const salt = fc.constantFrom('NaCl' as const, 'KCl' as const)
    fc.assert(
      fc.property(kindId, curve, salt, between(0, 40), between(0, 5), (id, which, kind, dose, more) => {
        const capacity = capacityKgrFt3(id, dose, kind, which)
        expect(capacityKgrFt3(id, dose + more, kind, which)).toBeGreaterThanOrEqual(capacity)
        expect(capacity * 1000).toBeLessThanOrEqual(stoichiometricGrPerLb(kind) * dose + 1e-6)
      }),
      { seed },
    )
  })
})

describe('bag plan equals brute force', () => {
  /** Every combination up to what covers the need with the smallest bag alone; the same order of preference, written out again. */
  function bruteForce(need: number, sizes: { volumeFt3: number }[]): [waste: number, bags: number] {
    const least = need * 0.98
    let best: [number, number] = [Number.POSITIVE_INFINITY, 0]
    const walk = (at: number, filled: number, bags: number) => {
      const size = sizes[at]
      if (size === undefined) {
        if (filled < least - 1e-6) return
        const found: [number, number] = [Math.round(Math.max(0, filled - need) * 1e6), bags]
        if (found[0] < best[0] || (found[0] === best[0] && found[1] < best[1])) best = found
        return
      }
      for (let count = 0; count * size.volumeFt3 <= need + size.volumeFt3; count += 1) {
        walk(at + 1, filled + count * size.volumeFt3, bags + count)
      }
    }
    walk(0, 0, 0)
    return best
  }
  it('for needs to 4 ft³ and up to three sizes', () => {
    // Sizes in whole hundredths, so that equal wastes are equal in both.
    const size = fc.record({ volumeFt3: fc.integer({ min: 20, max: 120 }).map((n) => n / 100) })
    const sizes = fc.uniqueArray(size, { minLength: 1, maxLength: 3, selector: (one) => one.volumeFt3 })
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 400 }), sizes, (hundredths, some) => {
        const need = hundredths / 100
        const plan = planBags(
          need,
          some.map((one) => ({ ...one, label: `${one.volumeFt3} ft³` })),
        )
        if (plan === null) throw new Error('a plan exists')
        expect([Math.round(plan.wasteFt3 * 1e6), plan.bagCount]).toEqual(bruteForce(need, some))
      }),
      { seed, numRuns: 300 },
    )
  })
})

/** Anything a form may send: missing, absurd, infinite, not a number. */
const wild = fc.oneof(
  fc.constant(null),
  fc.double(),
  between(0, 100),
  fc.constantFrom(0, -1, 1e-9, 1e12, Number.NaN, Number.POSITIVE_INFINITY),
)
const display = fc.record({ locale: fc.constantFrom('en-US', 'de-DE'), unitSystem: fc.constantFrom('us' as const, 'metric' as const) })

function expectSound(value: unknown, path = ''): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${path} is ${value}`)
  } else if (typeof value === 'string') {
    if (/NaN|undefined|Infinity/.test(value)) throw new Error(`${path} reads "${value}"`)
  } else if (value !== null && typeof value === 'object') {
    for (const [key, inner] of Object.entries(value)) expectSound(inner, `${path}.${key}`)
  }
}

describe('any input gives a sound result or a sentence', () => {
  const input = fc.record({
    diameterIn: fc.oneof(wild, between(4, 40)),
    heightIn: fc.oneof(wild, between(10, 100)),
    resinVolumeFt3: wild,
    nominalGrains: fc.oneof(wild, fc.integer({ min: 8000, max: 400_000 })),
    resinKind: fc.option(kindId),
    gravelLb: wild,
    tubeOutsideDiameterIn: wild,
    oldTubeLengthIn: wild,
    backwashGpm: wild,
    waterTemperatureF: wild,
    bleachPercent: wild,
    openingIn: wild,
    pressurePsi: wild,
    display,
  })
  it('drawing, kit and procedure', () => {
    fc.assert(
      fc.property(input, (some) => {
        const drawing = drawBed({ ...some, words: SPEAKING.words })
        if (drawing.ok) {
          expectSound(drawing)
          for (const shape of drawing.value.shapes) expect(svgPath(shape.path)).not.toMatch(/NaN|undefined/)
        } else expect(drawing.reason).toMatch(/\.$/)
        const kit = rebedKit({ ...some, words: SPEAKING.words })
        if (kit.ok) {
          expectSound(kit)
          for (const line of kit.value.lines) expect(line.quantity).toBeGreaterThan(0)
          expect(kit.value.bagPlan.volumeFt3).toBeGreaterThanOrEqual(0.98 * kit.value.resinFt3 - 1e-6)
        } else expect(kit.reason).toMatch(/\.$/)
        expectSound(rebedProcedure(some, ENGLISH))
      }),
      { seed, numRuns: 1000 },
    )
  })
})
