import { createHash } from 'node:crypto'
import { weekdayOf } from '@almanac/units/calendar/calendar-day'
import { describe, expect, it } from 'vitest'
import { brackwater, larkmoor } from './firms.ts'
import { planFirm } from './plan-firm.ts'

const COMPANY = '01900000-0000-7000-8000-000000000001'
const TECHNICIAN = '01900000-0000-7000-8000-000000000002'
const ANCHOR = '2026-11-25'
const plan = (anchorDay = ANCHOR, seed = 7, firm = larkmoor(anchorDay)) =>
  planFirm(COMPANY, firm, seed, anchorDay, new Map([['Tomas Reyes', TECHNICIAN]]))
const big = plan()

/** The facts without ids, which the clock makes and which differ each time. */
function hashOf({ rows, sheets, stores }: ReturnType<typeof planFirm>): string {
  const plain = JSON.stringify({ rows, sheets, stores }, (key, value) => (key === 'id' || key.endsWith('Id') ? undefined : value))
  return createHash('sha256').update(plain).digest('hex')
}
const share = (count: number, of: readonly unknown[]) => count / of.length
const time = (date: Date | string | null | undefined) => (date ? new Date(date).getTime() : null)
const groups = <T>(list: readonly T[], keyOf: (one: T) => string) => {
  const map = new Map<string, T[]>()
  for (const one of list) map.set(keyOf(one), [...(map.get(keyOf(one)) ?? []), one])
  return [...map.values()]
}

describe('the demo, for a seed and an anchor day', () => {
  it('is the same each time, and another for another seed or day', () => {
    expect(hashOf(plan())).toBe(hashOf(big))
    expect(hashOf(plan(ANCHOR, 8))).not.toBe(hashOf(big))
    expect(hashOf(plan('2026-11-26'))).not.toBe(hashOf(big))
  })

  it('has the size that was asked for: 1,500 sites, three town supplies, about 15 % wells, 25 years', () => {
    expect(big.rows.site).toHaveLength(1500)
    expect(big.rows.waterSupply.filter((supply) => supply.kind === 'town')).toHaveLength(3)
    expect(share(big.rows.waterSupply.filter((supply) => supply.kind === 'private-well').length, big.rows.site)).toBeCloseTo(0.15, 1)
    const days = big.rows.job.flatMap((job) => time(job.closedDay) ?? [])
    expect((Math.max(...days) - Math.min(...days)) / 365.25 / 86_400_000).toBeGreaterThan(20)
  })

  it('is mostly ordinary work with rebeds among it', () => {
    const closed = big.rows.job.filter((job) => job.state === 'closed')
    const rebeds = share(closed.filter((job) => job.kind === 'rebed').length, closed)
    expect(rebeds).toBeGreaterThan(0.05)
    expect(rebeds).toBeLessThan(0.3)
    expect(new Set(closed.map((job) => job.kind))).toEqual(new Set(['rebed', 'annual-visit', 'cleaning', 'repair', 'inspection']))
  })
})

describe('what the records say of beds', () => {
  const { bed, tank } = big.rows

  it('holds one open bed at most for each tank, and no day that contradicts another', () => {
    for (const beds of groups(bed, (one) => one.tankId)) expect(beds.filter((one) => !one.endedLatest).length).toBeLessThanOrEqual(1)
    expect(new Set(bed.map((one) => one.tankId)).size).toBe(tank.length)
    for (const one of bed) {
      const [from, to, seen, ended] = [one.beganEarliest, one.beganLatest, one.lastSeenDay, one.endedLatest].map(time)
      if (from != null && to != null) expect(from).toBeLessThanOrEqual(to)
      if (from != null && ended != null) expect(from).toBeLessThanOrEqual(ended)
      if (from != null && seen != null) expect(from).toBeLessThanOrEqual(seen)
      for (const day of [from, seen, ended]) expect(day ?? 0).toBeLessThanOrEqual(time(ANCHOR) ?? 0)
      expect(one.endedLatest === null).toBe(one.endCause === null)
    }
  })

  it('knows beginnings exactly, by the year, only "before", or not at all', () => {
    const open = bed.filter((one) => !one.endedLatest)
    const exact = open.filter((one) => one.beganEarliest && time(one.beganEarliest) === time(one.beganLatest)).length
    const before = open.filter((one) => !one.beganEarliest && one.beganLatest).length
    const unknown = open.filter((one) => !one.beganLatest).length
    expect(share(exact, open)).toBeGreaterThan(0.4)
    expect(share(open.length - exact - before - unknown, open)).toBeGreaterThan(0.1)
    expect(share(before, open)).toBeGreaterThan(0.01)
    expect(unknown).toBeGreaterThan(0)
  })

  it('has beds that nobody has seen for years, and ended ones with several causes', () => {
    const old = bed.filter((one) => !one.endedLatest && (time(one.lastSeenDay) ?? 0) < (time('2021-11-25') ?? 0))
    expect(old.length).toBeGreaterThan(20)
    expect(new Set(bed.flatMap((one) => one.endCause ?? [])).size).toBeGreaterThanOrEqual(4)
  })
})

describe('people and day sheets', () => {
  it('leaves nobody and no vehicle in two places at once', () => {
    const spans = [
      ...big.sheets.assignment.map((one) => ({ who: one.colleagueId, from: time(one.startsAt) ?? 0, to: time(one.endsAt) ?? 0 })),
      ...big.sheets.vehicleUse.map((one) => ({ who: one.vehicleId, from: time(one.startsAt) ?? 0, to: time(one.endsAt) ?? 0 })),
    ]
    for (const list of groups(spans, (one) => one.who)) {
      list.sort((a, b) => a.from - b.from)
      list.forEach((one, i) => {
        expect(one.from).toBeLessThan(one.to)
        expect(one.from).toBeGreaterThanOrEqual(list[i - 1]?.to ?? 0)
      })
    }
  })

  it('tells begin and end of closed visits, of one a sheet at most, within a quarter or so of what was planned', () => {
    const told = big.sheets.visit.filter((one) => one.closeOut)
    expect(told.length).toBeGreaterThan(200)
    expect(new Set(told.map((one) => one.crewDayId)).size).toBe(told.length)
    for (const one of told) {
      const { startedAt, finishedAt } = one.closeOut as { startedAt: string; finishedAt: string }
      const took = (Date.parse(finishedAt) - Date.parse(startedAt)) / ((time(one.endsAt) ?? 0) - (time(one.startsAt) ?? 0))
      expect(one.state).toBe('closed')
      expect(took).toBeGreaterThan(0.65)
      expect(took).toBeLessThan(1.3)
    }
  })

  it.each([ANCHOR, '2026-11-28', '2024-02-29'])('gives the technician a rebed for two, a yearly visit and a cleaning on %s', (day) => {
    const { rows, sheets, colleague } = plan(day)
    const me = colleague.find((one) => one.personId === TECHNICIAN)?.id
    const today = new Set(sheets.crewDay.filter((one) => time(one.day) === time(day)).map((one) => one.id))
    const mine = new Set(sheets.assignment.filter((one) => one.colleagueId === me).map((one) => one.visitId))
    const jobs = sheets.visit.filter((visit) => today.has(visit.crewDayId) && mine.has(visit.id)).map((visit) => visit.jobId)
    const kinds = rows.job.filter((job) => jobs.includes(job.id)).map((job) => [job.kind, job.crewSize, job.state])
    expect(kinds).toEqual([
      ['rebed', 2, 'booked'],
      ['annual-visit', 1, 'booked'],
      ['cleaning', 1, 'booked'],
    ])
  })

  it('opens sheets for at least 15 working days ahead and leaves some jobs without a place', () => {
    const ahead = new Set(big.sheets.crewDay.map((one) => time(one.day) ?? 0).filter((day) => day >= (time(ANCHOR) ?? 0)))
    expect(ahead.size).toBeGreaterThanOrEqual(15)
    for (const day of ahead) expect(weekdayOf(new Date(day).toISOString().slice(0, 10))).toBeLessThanOrEqual(5)
    expect(big.rows.job.filter((job) => job.state === 'proposed').length).toBeGreaterThan(5)
  })

  it('uses addresses that are kept for examples, and asks before it writes', () => {
    for (const { email } of big.rows.contact) if (email) expect(email).toMatch(/^[a-z0-9.]+@([a-z]+\.)?example\.com$/)
    const asked = new Set(big.rows.consent.map((one) => one.contactId))
    expect(share(asked.size, big.rows.contact)).toBeGreaterThan(0.6)
    expect(share(asked.size, big.rows.contact)).toBeLessThan(0.95)
    expect(big.rows.consent.some((one) => !one.granted)).toBe(true)
  })

  it('makes the second firm small and all of its own', () => {
    const small = plan(ANCHOR, 8, brackwater())
    expect(small.rows.site).toHaveLength(60)
    expect(brackwater()).toMatchObject({ unitSystem: 'metric', currency: 'EUR', timeZone: 'Europe/Dublin' })
  })
})
