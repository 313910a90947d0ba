import { type BagSize, LITRE_BAGS, planBags } from '@almanac/softener/kit/bag-plan'
import type { RebedKit, RebedKitInput } from '@almanac/softener/kit/kit-types'
import { rebedKit } from '@almanac/softener/kit/rebed-kit'
import { sanitiserDoseFlOz } from '@almanac/softener/kit/sanitiser'
import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../support/speaking.ts'

function kit(change: Partial<RebedKitInput>): RebedKit {
  const result = rebedKit({ diameterIn: 10, heightIn: 54, ...SPEAKING, ...change })
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const texts = (value: RebedKit, item: string) => value.lines.filter((line) => line.item === item).map((line) => line.text)

describe('bags: whole ft³ with part bags of ½ and ¼, elsewhere 25 L (common practice, no source)', () => {
  const counts = (need: number, sizes?: readonly BagSize[]) => planBags(need, sizes)?.bags.map((bag) => [bag.volumeFt3, bag.count])
  it.each([
    [
      1.5,
      [
        [1, 1],
        [0.5, 1],
      ],
    ],
    [
      0.75,
      [
        [0.5, 1],
        [0.25, 1],
      ],
    ],
    [10, [[1, 10]]],
    [0.1, [[0.25, 1]]],
  ])('%d ft³', (need, expected) => expect(counts(need)).toEqual(expected))
  it('42 L (1½ ft³) take two bags of 25 L and leave 7.5 L', () => {
    const plan = planBags(1.5, LITRE_BAGS)
    expect(plan?.bagCount).toBe(2)
    expect((plan?.wasteFt3 ?? 0) * 28.316846592).toBeCloseTo(50 - 42.475, 2)
  })
  it('does not buy a third bag for a hair: within 2% counts as full', () => {
    expect(planBags(1.77, LITRE_BAGS)?.bagCount).toBe(2)
    expect(planBags(1.81, LITRE_BAGS)?.bagCount).toBe(3)
  })
  it('gives no plan for nonsense', () => {
    for (const need of [0, -1, Number.NaN, 1e9]) expect(planBags(need)).toBeNull()
    expect(planBags(1, [])).toBeNull()
    expect(planBags(1, [{ volumeFt3: 0 }])).toBeNull()
  })
})

describe('kit of one rebed', () => {
  it('10 × 54: 1½ ft³ in two bags, 18 lb of gravel, one of each small part', () => {
    const value = kit({ oldTubeLengthIn: 52.5 })
    expect(texts(value, 'resin')).toEqual([
      '1 × 1 ft³ bag of 8% crosslink softening resin',
      '1 × ½ ft³ part bag of 8% crosslink softening resin',
    ])
    expect(texts(value, 'gravel')).toEqual(['18 lb of quartz gravel'])
    expect(texts(value, 'distributor-tube')[0]).toMatch(/1\.05 in outside diameter, cut to 52½ in/)
    for (const item of ['tube-cap', 'fill-funnel', 'seals', 'silicone-grease', 'sanitiser', 'spent-resin-container', 'drain-strainer']) {
      expect(texts(value, item)).toHaveLength(1)
    }
    // 1.5 × 51 lb/ft³ (typical data sheets) and 18 lb.
    expect(value.loadWeightLb).toBeCloseTo(94.5, 6)
    expect(value.loadVolumeFt3).toBeCloseTo(1.68, 6)
    expect(value.crewSize).toBe(2)
    // Pails of 0.45 ft³ for 1.65 ft³ of swollen resin and 0.18 of gravel (common practice, no source).
    expect(value.lines.find((line) => line.item === 'spent-resin-container')?.quantity).toBe(5)
  })
  it('10% crosslink weighs 53 lb/ft³ (typical data sheets)', () =>
    expect(kit({ resinKind: 'gel-10', gravelLb: 0 }).loadWeightLb).toBeCloseTo(79.5, 6))
  it('sanitiser (typical manual): 1.2 fl oz of 5.25% a ft³, about 0.8 of 8.25%', () => {
    expect(sanitiserDoseFlOz(1, 5.25)).toBeCloseTo(1.2, 10)
    expect(Math.abs(sanitiserDoseFlOz(1, 8.25) - 0.8)).toBeLessThan(0.05)
    expect(texts(kit({ bleachPercent: 5.25 }), 'sanitiser')).toEqual(['1.8 fl oz of plain 5.25% bleach'])
  })
  it('gravel: matters from about 1½ ft³ up (common practice, no source); the record and the firm’s wish come first', () => {
    expect(texts(kit({ diameterIn: 9, heightIn: 48 }), 'gravel')).toEqual([])
    expect(texts(kit({ gravelLb: 0 }), 'gravel')).toEqual([])
    expect(texts(kit({ gravelWanted: false }), 'gravel')).toEqual([])
    expect(texts(kit({ diameterIn: 9, heightIn: 48, gravelWanted: true }), 'gravel')).toEqual(['14 lb of quartz gravel'])
    expect(texts(kit({ diameterIn: 24, heightIn: 72 }), 'gravel')).toHaveLength(2)
  })
  it('two layers from 14 in up, half coarse and half fine (from memory)', () => {
    expect(texts(kit({ diameterIn: 13, heightIn: 54 }), 'gravel')).toHaveLength(1)
    expect(texts(kit({ diameterIn: 14, heightIn: 65, gravelLb: 46 }), 'gravel')).toEqual([
      '23 lb of quartz gravel, coarse (first layer)',
      '23 lb of quartz gravel, fine (second layer)',
    ])
  })
  it('old resin has swollen by a tenth; bleach is taken as 8.25% and that is said (common practice, no source)', () => {
    expect(kit({}).spentResinFt3).toBeCloseTo(1.65, 10)
    expect(texts(kit({}), 'sanitiser')).toEqual(['1.1 fl oz of plain 8.25% bleach'])
  })
  it('metric: bags of 25 L, lengths in mm, weights in kg', () => {
    const value = kit({ display: { locale: 'en-US', unitSystem: 'metric' } })
    expect(texts(value, 'resin')).toEqual(['2 × 25 L bag of 8% crosslink softening resin'])
    expect(texts(value, 'gravel')).toEqual(['8.2 kg of quartz gravel'])
    expect(texts(value, 'distributor-tube')[0]).toMatch(/27 mm outside diameter, cut to about 1,338 mm/)
    expect(value.warnings.join()).toMatch(/ft³ over/)
  })
  it('says what it assumed and what is missing, and refuses without a tank size', () => {
    const result = rebedKit({ diameterIn: 10, heightIn: 54, ...SPEAKING })
    expect(result.ok && result.assumptions.length).toBeGreaterThan(3)
    expect(result.ok && result.missing).toContain('length of the old distributor tube')
    expect(rebedKit({ diameterIn: null, heightIn: 54, ...SPEAKING })).toMatchObject({
      ok: false,
      reason: expect.stringContaining('measure'),
    })
    for (const line of kit({}).lines) for (const text of [line.label, line.text, line.why, line.source]) expect(text).not.toBe('')
  })
})
