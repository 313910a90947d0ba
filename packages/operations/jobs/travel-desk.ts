import type { Scope } from '@almanac/database/in-company'
import { readSettings } from '@almanac/database/read/firm-settings'
import { readClosedVisits } from '@almanac/database/read/observed-drives'
import { type CalibrationResult, calibrate, type DriveObservation } from '@almanac/dispatch/travel/calibrate'
import { estimateLeg, type LegOrigin, rushFactor } from '@almanac/dispatch/travel/estimate-leg'
import { isPoint, type LatLon } from '@almanac/dispatch/travel/point'
import { legKey } from '@almanac/dispatch/travel/table-answer'
import { now } from '@almanac/runtime/clock'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { serverLegs } from './travel-server.ts'

/** One drive to work out; the instant says whether it falls into a rush hour. */
export type AskedLeg = { from: LatLon | null; to: LatLon | null; at: Date }

/** A drive in minutes and road miles, null where a place is not known. */
export type Drive = { basis: LegOrigin; minutes: number | null; miles: number | null }

/** What is needed to work out a company's drives. */
export type TravelDesk = CalibrationResult & { timeZone: string; yard: LatLon | null }

const DAY_MS = 86_400_000
const LOOK_BACK_DAYS = 365
const KEPT_MS = 3_600_000

const calibrations = new Map<string, { result: CalibrationResult; until: number }>()

/** Coordinates as a point; null where one of them is missing. */
export const pointOf = ({ latitude, longitude }: { latitude: number | null; longitude: number | null }): LatLon | null =>
  latitude === null || longitude === null ? null : { lat: latitude, lon: longitude }

/** Minutes since midnight on the clock of a zone. */
export const minuteOfDay = (timeZone: string, at: Date): number => {
  const [hours = 0, minutes = 0] = clockIn(timeZone, at).split(':').map(Number)
  return hours * 60 + minutes
}

/** The firm's own drives: from the end of one visit to the beginning of the crew's next. */
async function observedDrives(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<DriveObservation[]> {
  const visits = await readClosedVisits(scope, new Date(now().getTime() - LOOK_BACK_DAYS * DAY_MS))
  return visits.slice(1).flatMap((next, n) => {
    const before = visits[n]
    if (!before || before.crewDayId !== next.crewDayId) return []
    const minutes = (Date.parse(next.startedAt) - Date.parse(before.finishedAt)) / 60_000
    return [{ from: pointOf(before), to: pointOf(next), minuteOfDay: minuteOfDay(timeZone, new Date(before.finishedAt)), minutes }]
  })
}

/** Found once an hour: reading a year of visits for each page would be waste. */
async function calibrationOf(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<CalibrationResult> {
  const held = calibrations.get(scope.companyId)
  if (held && held.until > now().getTime()) return held.result
  const result = calibrate(await observedDrives(scope, timeZone))
  calibrations.set(scope.companyId, { result, until: now().getTime() + KEPT_MS })
  return result
}

/** Reads the yard and the firm's own factors. */
export async function openTravelDesk(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<TravelDesk> {
  const { yardLatitude, yardLongitude } = await readSettings(scope)
  const yard = pointOf({ latitude: yardLatitude, longitude: yardLongitude })
  return { timeZone, yard, ...(await calibrationOf(scope, timeZone)) }
}

/** Works out some drives: by the travel server where it knows the road, else from coordinates, else unknown. Outside any transaction. */
export async function workOutDrives(desk: TravelDesk, legs: readonly AskedLeg[]): Promise<Drive[]> {
  const { calibration, timeZone } = desk
  const known = legs.flatMap(({ from, to }) => (isPoint(from) && isPoint(to) ? [{ from, to }] : []))
  const server = await serverLegs(known)
  return legs.map(({ from, to, at }): Drive => {
    const served = isPoint(from) && isPoint(to) ? server.get(legKey(from, to)) : undefined
    const leg = served ? { origin: 'server' as const, ...served } : estimateLeg(from, to, calibration)
    const minutes = leg.seconds === null ? null : (leg.seconds / 60) * rushFactor(calibration, minuteOfDay(timeZone, at))
    return { basis: leg.origin, minutes, miles: leg.miles }
  })
}
