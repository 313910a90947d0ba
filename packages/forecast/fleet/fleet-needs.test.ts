import { describe, expect, it } from 'vitest'
import { groupCounter } from './group-counts.ts'
import { materialNeeds } from './material-needs.ts'

describe('the fleet by group', () => {
  const bed = (group: string | null, chance: number, chanceAlreadyFailed = 0) => ({
    group,
    chanceAlreadyFailed,
    monthChances: [chance, chance],
    nodeMonthChances: [chance, chance, chance, chance],
  })

  it('counts each bed in its own group, largest first, with what has probably failed already beside the months', () => {
    const counter = groupCounter(2)
    for (const one of [bed('town', 0.5, 0.2), bed('town', 0.5, 0.3), bed('well', 0.1), bed('town', 0)]) counter.add(one)
    const groups = counter.counts()
    expect(groups.map(({ group, beds }) => [group, beds])).toEqual([
      ['town', 3],
      ['well', 1],
    ])
    expect(groups[0]?.overdueNow).toBeCloseTo(0.5, 12)
    expect(groups[0]?.months[1]?.mean).toBeCloseTo(1, 12)
    // Two fair coins: none, one or two with chances ¼, ½, ¼.
    expect([groups[0]?.months[0]?.p10, groups[0]?.months[0]?.p50, groups[0]?.months[0]?.p90]).toEqual([0, 1, 2])
    expect(groupCounter(2).counts()).toEqual([])
  })

  it('regroups as if each bed had been counted in the coarser group, small chances and large', () => {
    const chances = [0.02, 0.5, 0.11, 0.3, 0.07, 0.9, 0, 0.16]
    const [fine, coarse] = [groupCounter(2), groupCounter(2)]
    chances.forEach((chance, i) => {
      fine.add(bed(`cell ${i % 3}`, chance, 0.1))
      coarse.add(bed(i % 3 === 0 ? null : 'rest', chance, 0.1))
    })
    const regrouped = fine.regroup((cell) => (cell === 'cell 0' ? null : 'rest')).counts()
    expect(regrouped.map(({ group, beds }) => [group, beds])).toEqual([
      ['rest', 5],
      [null, 3],
    ])
    coarse.counts().forEach(({ months, overdueNow }, g) => {
      expect(regrouped[g]?.overdueNow).toBeCloseTo(overdueNow, 12)
      months.forEach(({ mean, p10, p50, p90 }, m) => {
        expect(regrouped[g]?.months[m]?.mean).toBeCloseTo(mean, 12)
        expect(regrouped[g]?.months[m]).toMatchObject({ p10, p50, p90 })
      })
    })
    // The fine groups stay as they were.
    expect(fine.counts()).toHaveLength(3)
  })
})

describe('what rebeds take', () => {
  const small = { resinFt3: 1.5, gravelLb: 15, crewHours: 2.5 }
  const large = { resinFt3: 10, gravelLb: 100, crewHours: 8 }

  it('adds up each bed’s own kit by its chance', () => {
    const [first, second] = materialNeeds(
      [
        { chances: [0.5, 0], kit: small },
        { chances: [0.2, 1], kit: large },
      ],
      2,
    )
    expect(first).toMatchObject({ month: 0, rebeds: 0.7, gravelLb: 27.5 })
    expect(first?.resinFt3).toBeCloseTo(2.75, 12)
    expect(first?.crewHours).toBeCloseTo(2.85, 12)
    // Variance by hand: 0.25 · 1.5² + 0.16 · 10².
    expect(first?.resinSdFt3).toBeCloseTo(Math.sqrt(0.5625 + 16), 12)
    expect(second).toMatchObject({ rebeds: 1, resinFt3: 10, resinSdFt3: 0 })
  })

  it('throws at a kit that is none', () => {
    expect(() => materialNeeds([{ chances: [0.5], kit: { ...small, gravelLb: Number.NaN } }], 1)).toThrow(/kit of NaN/)
  })
})
