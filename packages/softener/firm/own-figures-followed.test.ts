import { describe, expect, test } from 'vitest'
import { ENGLISH } from '../../../tests/support/procedure-words.ts'
import { SPEAKING } from '../../../tests/support/speaking.ts'
import { bagName } from '../kit/bag-plan.ts'
import { rebedKit } from '../kit/rebed-kit.ts'
import { rebedProcedure } from '../procedure/rebed-procedure.ts'
import { fillForTank } from '../tanks/fill-for-tank.ts'
import { mergeFigures } from './merge-figures.ts'

const tank = (resin: number, gravel: number) => ({
  diameterIn: 10,
  heightIn: 54,
  resinFt3: { usual: resin },
  gravelLb: { usual: gravel },
  openingsIn: [2.5],
})

describe('what is computed follows a firm’s figures', () => {
  const kit = (overrides: { key: string; value: unknown }[], more = {}) => {
    const made = rebedKit({
      diameterIn: 10,
      heightIn: 54,
      figures: mergeFigures(overrides).figures,
      ...SPEAKING,
      ...more,
    })
    if (!made.ok) throw new Error(made.reason)
    return made
  }

  test('a tank’s usual fill', () => {
    expect(kit([]).value).toMatchObject({ resinFt3: 1.5, gravelLb: 18 })
    const own = kit([{ key: 'tank:10x54', value: tank(1.25, 16) }])
    expect(own.value).toMatchObject({ resinFt3: 1.25 })
    expect(own.assumptions.join(' ')).toContain('Resin volume taken as usual for a 10 × 54 in tank (your company’s own value).')
    // The record outranks the table, the firm's too.
    expect(kit([{ key: 'tank:10x54', value: tank(1.25, 16) }], { resinVolumeFt3: 1 }).value.resinFt3).toBe(1)
    expect(
      fillForTank({ diameterIn: 10, heightIn: 54 }, SPEAKING, mergeFigures([{ key: 'tank:10x54', value: tank(1.25, 16) }]).figures.tanks),
    ).toMatchObject({
      value: { resinFt3: 1.25, gravelLb: 16 },
      sources: ['your company’s own value'],
    })
  })

  test('the gravel rule, and a tank the firm fills without', () => {
    expect(kit([{ key: 'gravel-from-ft3', value: 2 }]).value.gravelLb).toBe(0)
    expect(kit([{ key: 'gravel-from-ft3', value: 1.5 }]).value.gravelLb).toBe(18)
    expect(kit([{ key: 'gravel-from-ft3', value: 2 }]).assumptions.join(' ')).toContain(
      'left out, since your company uses it from 2 ft³ of resin up',
    )
    // A unit that is recorded with gravel keeps it, whatever the rule.
    expect(kit([{ key: 'gravel-from-ft3', value: 2 }], { gravelLb: 15 }).value.gravelLb).toBe(15)
    const without = kit([{ key: 'tank:10x54', value: tank(1.5, 0) }])
    expect(without.value.lines.filter((line) => line.item === 'gravel')).toEqual([])
  })

  test('the bags', () => {
    expect(kit([]).value.bagPlan.bags.map(({ count, volumeFt3 }) => [count, volumeFt3])).toEqual([
      [1, 1],
      [1, 0.5],
    ])
    const named = (sizes: readonly { volumeFt3: number }[] | null) => sizes?.map((bag) => bagName(bag.volumeFt3, SPEAKING.words))
    expect(kit([{ key: 'bags', value: [0.75] }]).value.bagPlan.bags).toMatchObject([{ volumeFt3: 0.75, count: 2 }])
    expect(named([{ volumeFt3: 1 }, { volumeFt3: 0.5 }, { volumeFt3: 0.75 }])).toEqual(['1 ft³ bag', '½ ft³ part bag', '¾ ft³ bag'])
    const litres = mergeFigures([{ key: 'bags', value: [10 / 28.316846592] }]).figures.bagSizes
    expect(named(litres)).toEqual(['10 L bag'])
    // 0.7234 ft³ is neither whole litres (20.48) nor eighths.
    expect(named(mergeFigures([{ key: 'bags', value: [0.72345] }]).figures.bagSizes)).toEqual(['0.723 ft³ bag'])
  })

  test('the steps of the job', () => {
    const figures = mergeFigures([{ key: 'tank:10x54', value: tank(1.25, 16) }]).figures
    const words = (own: typeof figures | null) =>
      JSON.stringify(rebedProcedure({ diameterIn: 10, heightIn: 54, figures: own, ...SPEAKING }, ENGLISH))
    expect(words(figures)).toContain('1¼ ft³ assumed')
    expect(words(null)).toContain('1½ ft³ assumed')
  })
})
