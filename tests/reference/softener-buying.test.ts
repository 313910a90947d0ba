import { planBags } from '@almanac/softener/kit/bag-plan'
import { bagsFromShelf, type ShelfBag } from '@almanac/softener/kit/bags-on-shelf'
import { chooseTube, tubeSpeedFtS } from '@almanac/softener/kit/choose-tube'
import { compareKits } from '@almanac/softener/kit/compare-kits'
import type { RebedKit, RebedKitInput } from '@almanac/softener/kit/kit-types'
import { type ListedPrice, priceKit } from '@almanac/softener/kit/price-kit'
import { rebedKit } from '@almanac/softener/kit/rebed-kit'
import { type StoresItem, storesForKit } from '@almanac/softener/kit/stores-for-kit'
import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../support/speaking.ts'

function kit(change: Partial<RebedKitInput> = {}): RebedKit {
  const result = rebedKit({
    diameterIn: 10,
    heightIn: 54,
    oldTubeLengthIn: 52.5,
    ...SPEAKING,
    ...change,
  })
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const tube = (change: Partial<RebedKitInput>) => kit(change).lines.find((line) => line.item === 'distributor-tube')
const bag = (volumeFt3: number, onHand: number, resinKind: ShelfBag['resinKind'] = 'gel-8') => ({
  ...{ label: `${volumeFt3} ft³`, volumeFt3, onHand, resinKind },
})

describe('bags from the shelf', () => {
  const plan = planBags(1.5)
  const there = (shelf: ShelfBag[]) => plan?.bags.map((one) => bagsFromShelf(one, shelf, 'gel-8'))
  it('are counted by size, no more than the kit takes; two entries of one size together', () => {
    // 1½ ft³ by the cubic foot: one whole bag and a half.
    expect(plan?.bags.map((one) => [one.volumeFt3, one.count])).toEqual([
      [1, 1],
      [0.5, 1],
    ])
    expect(there([bag(1, 4), bag(0.5, 0)])).toEqual([1, 0])
    expect(planBags(3)?.bags.map((one) => bagsFromShelf(one, [bag(1, 1), bag(1, 1)], 'gel-8'))).toEqual([2])
  })
  it('never count another resin, an unknown one, or a part of a bag', () => {
    expect(there([bag(1, 3, 'gel-10'), bag(1, 3, null), bag(0.5, 0.4)])).toEqual([0, 0])
  })
  it('do not change the kit: what was booked is what is loaded', () => {
    const shelf = [bag(0.5, 3)]
    const compared = compareKits({ diameterIn: 10, heightIn: 54, ...SPEAKING }, LIST, shelf)
    const kitOfIts = rebedKit({ diameterIn: 10, heightIn: 54, ...SPEAKING, resinKind: 'gel-8' })
    if (!compared.ok || !kitOfIts.ok) throw new Error('no kit')
    expect(compared.value[0]?.kit).toEqual(kitOfIts.value)
    expect(compared.value[0]?.bagsFromShelf).toBe(1)
  })
})

describe('tube by valve and flow', () => {
  it('¾ in schedule 40 pipe, bore 0.824 in (ASTM D1785): 8 ft/s at 13.3 gpm, since v = 0.4085·gpm/d²', () => {
    expect(tubeSpeedFtS(10, 1.05)).toBeCloseTo((0.4085 * 10) / 0.824 ** 2, 4)
    expect(tubeSpeedFtS(13.3, 1.05)).toBeCloseTo(8, 2)
    expect(tubeSpeedFtS(50, 1.9)).toBeCloseTo((0.4085 * 50) / 1.61 ** 2, 4)
    expect(tubeSpeedFtS(10, 3)).toBeNull()
  })
  it('8 ft/s is the limit (common practice, no source): 13 gpm go through 1.05 in, 14 want 1.9 in', () => {
    const chosen = (flowGpm: number) => chooseTube({ flowGpm, diameterIn: 13, ...SPEAKING })
    expect(chosen(13)).toMatchObject({ outsideDiameterIn: 1.05, basis: 'flow', warning: null })
    expect(chosen(14)).toMatchObject({ outsideDiameterIn: 1.9, basis: 'flow', warning: null })
    expect(chosen(100).warning).toMatch(/ft\/s/)
  })
  it('the record outranks the valve, the valve the flow; each says so', () => {
    const valve = { label: 'Commercial valve', tubeOdIn: 1.9, tubeRule: 'An inch above the rim.', seals: 'Flange gasket.' }
    expect(tube({ valve, tubeOutsideDiameterIn: 1.05, flowGpm: 30 })?.text).toMatch(/1\.05 in outside/)
    expect(tube({ valve, flowGpm: 5 })?.text).toMatch(/1\.9 in outside/)
    expect(tube({ valve })?.why).toMatch(/By the valve: An inch above the rim\./)
    expect(kit({ valve }).lines.find((line) => line.item === 'seals')?.why).toMatch(/Flange gasket/)
    expect(kit({ tubeOutsideDiameterIn: 1.05, flowGpm: 20 }).warnings.join()).toMatch(/ft\/s in this tube/)
  })
  it('is cut to an eighth of an inch either way (from memory); an offset counts only where the old tube is not measured', () => {
    expect(tube({})?.text).toMatch(/cut to 52½ in \(± ⅛ in\)/)
    expect(tube({ display: { locale: 'en-US', unitSystem: 'metric' } })?.text).toMatch(/cut to 1,334 mm \(± 3 mm\)/)
    const guessed = kit({ oldTubeLengthIn: null }).tubeLengthIn
    expect(kit({ oldTubeLengthIn: null, tubeOffsetIn: -0.5 }).tubeLengthIn).toBeCloseTo(guessed - 0.5, 9)
    expect(kit({ tubeOffsetIn: -0.5 }).tubeLengthIn).toBe(52.5)
    expect(kit({ oldTubeLengthIn: null, tubeOffsetIn: Number.NaN }).tubeLengthIn).toBeCloseTo(guessed, 9)
  })
})

const PRICES: ListedPrice[] = [
  { item: 'resin', unit: 'bag', resinKind: 'gel-8', bagFt3: 1, priceMinor: 14_000 },
  { item: 'resin', unit: 'bag', resinKind: 'gel-8', bagFt3: 0.5, priceMinor: 8_000 },
  { item: 'resin', unit: 'bag', resinKind: 'gel-10', bagFt3: 1, priceMinor: 19_000 },
  { item: 'resin', unit: 'bag', resinKind: 'gel-10', bagFt3: 0.5, priceMinor: 10_500 },
  { item: 'gravel', unit: 'lb', priceMinor: 60 },
  { item: 'distributor-tube', unit: 'piece', priceMinor: 2_500 },
  { item: 'seals', unit: 'piece', priceMinor: 1_200 },
  { item: 'silicone-grease', unit: 'piece', priceMinor: 400 },
]
const LIST = { currency: 'USD', prices: PRICES }

describe('prices (invented)', () => {
  it('140 + 80 for resin, 18 lb at 0.60, tube 25, seals 12, grease 4: 271.80, and the sanitiser is named as unknown', () => {
    const priced = priceKit(kit(), LIST)
    expect(priced.knownMinor).toBe(14_000 + 8_000 + 18 * 60 + 2_500 + 1_200 + 400)
    expect(priced.unknown).toEqual(['Plain bleach, 8.25%'])
    expect(priced.totalMinor).toBeNull()
    const whole = priceKit(kit(), { ...LIST, prices: [...PRICES, { item: 'sanitiser', unit: 'fl oz', priceMinor: 10 }] })
    expect(whole.totalMinor).toBe(27_180 + 11)
  })
  it('what comes back with the crew is not charged', () => {
    const { lines } = priceKit(kit(), LIST)
    expect(lines.filter((one) => !one.charged).map((one) => one.line.item)).toEqual([
      'tube-cap',
      'fill-funnel',
      'spent-resin-container',
      'drain-strainer',
      ...['protection', 'tools', 'tests', 'spares'],
    ])
  })
  it('without a list every charged line is unknown, and nothing costs nothing', () => {
    const bare = priceKit(kit(), { currency: 'USD', prices: [] })
    expect(bare).toMatchObject({ knownMinor: 0, totalMinor: null })
    expect(bare.unknown).toHaveLength(bare.lines.filter((one) => one.charged).length)
  })
  it('a price that is no price is no price; of several the dearest, and that is said', () => {
    const odd = [Number.NaN, -5].map((priceMinor) => ({ item: 'seals' as const, unit: 'set' as const, priceMinor }))
    expect(priceKit(kit(), { currency: 'USD', prices: odd }).unknown).toContain('Seals: tank neck, tube and valve O-rings')
    const two = [1200, 1500].map((priceMinor) => ({ item: 'seals' as const, unit: 'set' as const, priceMinor }))
    const line = priceKit(kit(), { currency: 'USD', prices: two }).lines.find((one) => one.line.item === 'seals')
    expect(line).toMatchObject({ priceMinor: 1500, note: expect.stringContaining('most expensive') })
  })
})

describe('kits side by side', () => {
  it('10% weighs 3 lb more over 1½ ft³ (53 against 51 lb/ft³, typical data sheets) and costs 75 more by the list', () => {
    const result = compareKits({ diameterIn: 10, heightIn: 54, ...SPEAKING }, LIST, [bag(1, 2, 'gel-10')])
    if (!result.ok) throw new Error(result.reason)
    const [eight, ten, fine] = result.value
    expect(eight).toMatchObject({ kind: 'gel-8', moreMinor: 0, moreWeightLb: 0, bagsFromShelf: 0 })
    expect(ten?.moreWeightLb).toBeCloseTo(3, 9)
    expect(ten).toMatchObject({ kind: 'gel-10', moreMinor: 19_000 + 10_500 - 22_000, bagsFromShelf: 1 })
    // Fine mesh has no price in the list: no difference is made up.
    expect(fine).toMatchObject({ kind: 'fine-mesh', moreMinor: null })
    expect(fine?.kit.warnings.join()).toMatch(/slots fine enough/)
  })
  it('refuses as the kit does', () => {
    expect(compareKits({ diameterIn: null, heightIn: 54, ...SPEAKING }, LIST)).toMatchObject({
      ok: false,
    })
  })
})

describe('the stores in the words of a kit', () => {
  const item = (change: Partial<StoresItem>): StoresItem => ({
    ...{ name: 'Tube', kind: 'tube', unit: 'piece', bagFt3: null, resinKind: null, tubeOdIn: null, onHand: 1, priceMinor: 100, ...change },
  })
  it('a tube is priced by the one that fits', () => {
    const { prices } = storesForKit([
      item({ name: 'Tube of the thin valves', tubeOdIn: 1.05, priceMinor: 2200 }),
      item({ name: 'Tube of the wide valves', tubeOdIn: 1.9, priceMinor: 5200 }),
    ])
    const tubePrice = (tubeOutsideDiameterIn: number) =>
      priceKit(kit({ tubeOutsideDiameterIn }), { currency: 'USD', prices }).lines.find((one) => one.line.item === 'distributor-tube')
    expect(tubePrice(1.05)).toMatchObject({ priceMinor: 2200, note: null })
    expect(tubePrice(1.9)).toMatchObject({ priceMinor: 5200, note: null })
    expect(tubePrice(0.8125)).toMatchObject({ priceMinor: null, note: 'price unknown' })
  })
  it('bags of fine mesh and of unknown resin are told apart; what a kit does not know prices nothing', () => {
    const { shelf, prices } = storesForKit([
      item({ kind: 'resin', unit: 'bag', bagFt3: 1, resinKind: 'fine-mesh', onHand: 2 }),
      item({ kind: 'resin', unit: 'bag', bagFt3: 1, resinKind: 'unknown', onHand: 5 }),
      item({ kind: 'other', unit: 'piece' }),
      item({ kind: 'seal', unit: 'dozen' }),
      item({ kind: 'gravel', unit: 'lb', priceMinor: null }),
    ])
    expect(shelf.map((one) => [one.resinKind, one.onHand])).toEqual([
      ['fine-mesh', 2],
      [null, 5],
    ])
    expect(prices.map((one) => one.item)).toEqual(['resin', 'resin'])
  })
})
