import type { DaySheet } from '@almanac/contract/day-sheets'
import { type Expected, expectDay } from '@almanac/service-rules/day-sheets/day-now'
import { useEffect, useState } from 'react'

const TICK_MS = 30_000

/** This device's clock, half a minute at a time; null until the page is alive in the browser, so that its first picture is the server's. */
export function useNow(): number | null {
  const [now, setNow] = useState<number | null>(null)
  useEffect(() => {
    setNow(Date.now())
    const timer = setInterval(() => setNow(Date.now()), TICK_MS)
    return () => clearInterval(timer)
  }, [])
  return now
}

const ms = (instant: string | null) => (instant === null ? null : Date.parse(instant))

/** What each visit of a sheet can be expected to be, seen from a moment, by visit. */
export function expectedOf(sheet: DaySheet, nowMs: number): ReadonlyMap<string, Expected> {
  const visits = sheet.visits.map((visit, n) => ({
    ...{ id: visit.id, state: visit.state === 'called-off' ? ('closed' as const) : visit.state },
    ...{ startMs: Date.parse(visit.startsAt), endMs: Date.parse(visit.endsAt) },
    ...{ startedMs: ms(visit.startedAt), closedMs: ms(visit.closedAt), untilMs: ms(visit.runningUntil) },
    promisedUntilMs: visit.state === 'offered' ? null : ms(visit.arriveUntil),
    driveMinutes: sheet.drives[n]?.minutes ?? null,
  }))
  return new Map(expectDay(Date.parse(sheet.startsAt), visits, nowMs).map((one) => [one.id, one]))
}
