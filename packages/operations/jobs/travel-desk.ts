import type { Scope } from '@almanac/database/in-company'
import { readDrivePace } from '@almanac/database/read/drive-pace'
import { readSettings } from '@almanac/database/read/firm-settings'
import { readClosedVisits } from '@almanac/database/read/observed-drives'
import { type CalibrationResult, calibrate, calibrationOf, type DriveObservation } from '@almanac/dispatch/travel/calibrate'
import { type Calibration, estimateLeg, type LegOrigin, rushFactor } from '@almanac/dispatch/travel/estimate-leg'
import { isPoint, type LatLon } from '@almanac/dispatch/travel/point'
import { legKey } from '@almanac/dispatch/travel/table-answer'
import type { DrivePace } from '@almanac/records/drive-pace'
import { now } from '@almanac/runtime/clock'
import { clockIn, dayIn, minutesBetween } from '@almanac/units/calendar/zone-clock'
import { serverLegs } from './travel-server.ts'

/** One drive to work out; the instant says whether it falls into a rush hour. */
export type AskedLeg = { from: LatLon | null; to: LatLon | null; at: Date }

/** A drive in minutes and road miles, null where a place is not known. */
export type Drive = { basis: LegOrigin; minutes: number | null; miles: number | null }

/** What is needed to work out a company's drives. */
export type TravelDesk = { calibration: Calibration; pace: DrivePace | null; timeZone: string; yard: LatLon | null }

const DAY_MS = 86_400_000
const LOOK_BACK_DAYS = 365
/** No visit of any kind is shorter: one that is was opened and closed at a table in the evening, and says nothing of the road. Common practice, no source. */
const LEAST_VISIT_MINUTES = 10

/** Coordinates as a point; null where one of them is missing. */
export const pointOf = ({ latitude, longitude }: { latitude: number | null; longitude: number | null }): LatLon | null =>
  latitude === null || longitude === null ? null : { lat: latitude, lon: longitude }

/** Minutes since midnight on the clock of a zone. */
export const minuteOfDay = (timeZone: string, at: Date): number => {
  const [hours = 0, minutes = 0] = clockIn(timeZone, at).split(':').map(Number)
  return hours * 60 + minutes
}

/** The firm's own drives: from the end of one visit to the beginning of the crew's next, both of them done where and when they say. */
async function observedDrives(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<DriveObservation[]> {
  const visits = await readClosedVisits(scope, new Date(now().getTime() - LOOK_BACK_DAYS * DAY_MS))
  const isDone = (visit: { startedAt: string; finishedAt: string }) =>
    minutesBetween(visit.startedAt, visit.finishedAt) >= LEAST_VISIT_MINUTES
  return visits.slice(1).flatMap((next, n) => {
    const before = visits[n]
    if (!before || before.crewDayId !== next.crewDayId || !isDone(before) || !isDone(next)) return []
    const [left, minutes] = [new Date(before.finishedAt), minutesBetween(before.finishedAt, next.startedAt)]
    return [{ from: pointOf(before), to: pointOf(next), day: dayIn(timeZone, left), minuteOfDay: minuteOfDay(timeZone, left), minutes }]
  })
}

/** What the last year's drives say; nothing is planned with it until the owner takes it over. */
export async function learnPace(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<CalibrationResult> {
  return calibrate(await observedDrives(scope, timeZone))
}

/** Reads the yard and the pace that the owner took over: the same for every process, at once. */
export async function openTravelDesk(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<TravelDesk> {
  const [{ yardLatitude, yardLongitude }, pace] = await Promise.all([readSettings(scope), readDrivePace(scope)])
  const yard = pointOf({ latitude: yardLatitude, longitude: yardLongitude })
  return { timeZone, yard, pace, calibration: calibrationOf(pace) }
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
