import { describe, expect, it } from 'vitest'
import { type LevelledBed, levelRebeds } from './level-rebeds.ts'

const bed = (id: string, crewHours: number, ...failedBy: number[]): LevelledBed => ({ id, crewHours, failedBy })

async function plan(beds: LevelledBed[], capacityHours: number[], riskLimit = 0.3) {
  const result = await levelRebeds(beds, { capacityHours, riskLimit })
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

describe('levelling rebeds', () => {
  it('finds what trying every plan finds', async () => {
    const beds = [bed('a', 3, 0.05, 0.2, 0.4), bed('b', 2, 0.1, 0.25, 0.5), bed('c', 4, 0.02, 0.1, 0.35), bed('d', 3, 0.2, 0.31, 0.6)]
    const capacity = [5, 5, 4]
    const lasts = [2, 2, 2, 1]
    let least = Number.POSITIVE_INFINITY
    for (let code = 0; code < 81; code++) {
      const months = beds.map((_, i) => Math.floor(code / 3 ** i) % 3)
      if (months.some((m, i) => m > (lasts[i] ?? 0))) continue
      const used = [0, 0, 0]
      let cost = 0
      beds.forEach((item, i) => {
        const m = months[i] ?? 0
        used[m] = (used[m] ?? 0) + item.crewHours
        cost += m === 0 ? 0 : (item.failedBy[m - 1] ?? 0)
      })
      if (used.every((hours, m) => hours <= (capacity[m] ?? 0))) least = Math.min(least, cost)
    }
    const value = await plan(beds, capacity)
    const cost = beds.reduce((sum, item) => {
      const m = value.months.get(item.id) ?? 0
      return sum + (m === 0 ? 0 : (item.failedBy[m - 1] ?? 0))
    }, 0)
    expect(least).toBeLessThan(1)
    expect(cost).toBeCloseTo(least, 9)
    expect(value.overtimeHours).toEqual([0, 0, 0])
  })

  it('lets a bed below the risk limit wait, and one beyond it take overtime when nothing else is left', async () => {
    const value = await plan([bed('young', 3, 0.01, 0.02), bed('late', 6, 0.5, 0.7)], [4, 4])
    expect(value.months.get('young')).toBeNull()
    expect(value.months.get('late')).toBe(0)
    expect(value.overtimeHours).toEqual([2, 0])
  })

  it('answers an empty list and refuses limits that are none', async () => {
    expect((await plan([], [4])).hours).toEqual([0])
    expect(await levelRebeds([], { capacityHours: [4], riskLimit: 0 })).toMatchObject({ ok: false })
    expect(await levelRebeds([bed('x', 0, 0.1)], { capacityHours: [4], riskLimit: 0.2 })).toMatchObject({ ok: false })
  })

  it('does no bed before its first month, unless the limit leaves no later one', async () => {
    const early = [0.05, 0.1, 0.2, 0.4]
    const value = await plan(
      [
        { ...bed('a', 2, ...early), firstMonth: 2 },
        { ...bed('b', 2, 0.1, 0.4, 0.5, 0.6), firstMonth: 3 },
      ],
      [9, 9, 9, 9],
    )
    expect([value.months.get('a'), value.months.get('b')]).toEqual([2, 1])
  })

  it('spreads the overtime that cannot be avoided over the months, to within one bed', async () => {
    const value = await plan(
      Array.from({ length: 6 }, (_, i) => bed(`b${i}`, 4, 0.05, 0.1, 0.4)),
      [4, 4, 4],
    )
    // Even is 8 hours a month; all of it in the first would be 24.
    expect(Math.max(...value.hours)).toBeLessThanOrEqual(12)
  })

  it('places 300 beds over 60 months within their months and the hours, proven within three parts in a hundred of the best', async () => {
    const beds = Array.from({ length: 300 }, (_, i): LevelledBed => {
      // Chances rise by the cube of the months, as of a bed that wears out; each at its own pace.
      const pace = 40 + ((i * 37) % 100)
      return {
        id: `b${i}`,
        crewHours: [4, 5, 6][i % 3] ?? 4,
        failedBy: Array.from({ length: 60 }, (_, m) => 1 - Math.exp(-(((m + 1) / pace) ** 3))),
        firstMonth: Math.floor(pace * 0.4),
      }
    })
    const capacity = new Array<number>(60).fill(18)
    const value = await plan(beds, capacity)
    const hours = new Array<number>(60).fill(0)
    for (const one of beds) {
      const last = Array.from(one.failedBy).findIndex((chance) => chance > 0.3)
      const month = value.months.get(one.id) ?? null
      expect(month !== null).toBe(last >= 0)
      if (month === null) continue
      expect(month).toBeGreaterThanOrEqual(Math.min(one.firstMonth ?? 0, last))
      expect(month).toBeLessThanOrEqual(last)
      hours[month] = (hours[month] ?? 0) + one.crewHours
    }
    expect(hours).toEqual(value.hours)
    expect(value.gap).toBeLessThan(0.03)
    // Twice as much is asked of the months in the middle as the crews have; it is spread to within one rebed of even.
    expect(Math.max(...value.overtimeHours)).toBeLessThan(30)
  })
})
