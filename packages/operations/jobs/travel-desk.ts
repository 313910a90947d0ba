import type { Scope } from '@almanac/database/in-company'
import { readSettings } from '@almanac/database/read/firm-settings'
import { readClosedVisits } from '@almanac/database/read/observed-drives'
import { calibratePace, type ObservedDrive, type Pace } from '@almanac/dispatch/travel/calibrate-pace'
import { type Drive, estimateDrive, rushFactor } from '@almanac/dispatch/travel/estimate-drive'
import type { Place } from '@almanac/dispatch/travel/great-circle'
import { type TravelModel, USUAL_TRAVEL } from '@almanac/dispatch/travel/travel-model'
import { now } from '@almanac/runtime/clock'
import { clockTimeIn } from './clock-times.ts'
import { serverDrives } from './travel-server.ts'

/** One drive to work out; the instant says whether it falls into a rush hour. */
export type Leg = { from: Place | null; to: Place | null; at: Date }

/** What is needed to work out a company's drives. */
export type TravelDesk = { timeZone: string; yard: Place | null; model: TravelModel; pace: Pace }

const DAY_MS = 86_400_000
const LOOK_BACK_DAYS = 365
const PACE_KEPT_MS = 3_600_000

const paces = new Map<string, { pace: Pace; until: number }>()

export const minuteOfDay = (timeZone: string, at: Date): number => {
  const [hours = 0, minutes = 0] = clockTimeIn(timeZone, at).split(':').map(Number)
  return hours * 60 + minutes
}

/** The firm's own drives: from the end of one visit to the beginning of the crew's next. */
async function observedDrives(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<ObservedDrive[]> {
  const visits = await readClosedVisits(scope, new Date(now().getTime() - LOOK_BACK_DAYS * DAY_MS))
  const placeOf = (one: { latitude: number | null; longitude: number | null }) =>
    one.latitude === null || one.longitude === null ? null : { latitude: one.latitude, longitude: one.longitude }
  return visits.slice(1).flatMap((next, n) => {
    const before = visits[n]
    const [from, to] = [before && placeOf(before), placeOf(next)]
    if (!before || !from || !to || before.crewDayId !== next.crewDayId) return []
    const minutes = (Date.parse(next.startedAt) - Date.parse(before.finishedAt)) / 60_000
    return [{ from, to, minuteOfDay: minuteOfDay(timeZone, new Date(before.finishedAt)), minutes }]
  })
}

async function paceOf(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<Pace> {
  const held = paces.get(scope.companyId)
  if (held && held.until > now().getTime()) return held.pace
  const pace = calibratePace(await observedDrives(scope, timeZone), USUAL_TRAVEL)
  paces.set(scope.companyId, { pace, until: now().getTime() + PACE_KEPT_MS })
  return pace
}

/** Reads the yard and the firm's pace. */
export async function openTravelDesk(scope: Pick<Scope, 'companyId'>, timeZone: string): Promise<TravelDesk> {
  const { yardLatitude, yardLongitude } = await readSettings(scope)
  const yard = yardLatitude === null || yardLongitude === null ? null : { latitude: yardLatitude, longitude: yardLongitude }
  const pace = await paceOf(scope, timeZone)
  return { timeZone, yard, pace, model: { ...USUAL_TRAVEL, pace: pace.pace } }
}

/** Works out some drives: by the travel server where it knows the road, else from coordinates, else unknown. Outside any transaction. */
export async function workOutDrives(desk: TravelDesk, legs: readonly Leg[]): Promise<Drive[]> {
  const known = legs.map(({ from, to }) => (from && to ? { from, to } : null))
  const asked = await serverDrives(known.filter((one) => one !== null))
  let next = 0
  return legs.map(({ from, to, at }, n) => {
    const minute = minuteOfDay(desk.timeZone, at)
    const drive = known[n] ? asked[next++] : null
    if (drive && drive.basis === 'server') return { ...drive, minutes: drive.minutes * rushFactor(minute, desk.model) }
    return estimateDrive(from, to, minute, desk.model)
  })
}
