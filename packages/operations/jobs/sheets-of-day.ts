import type { DaySheet } from '@almanac/contract/day-sheets'
import type { Scope } from '@almanac/database/in-company'
import { readDaySheets } from '@almanac/database/read/day-sheets'
import type { Drive } from '@almanac/dispatch/travel/estimate-drive'
import { placeOfSite } from '../shared/place-of-site.ts'
import { type Leg, openTravelDesk, workOutDrives } from './travel-desk.ts'

const row = (drive: Drive): DaySheet['drives'][number] =>
  drive.basis === 'unknown'
    ? { basis: 'unknown', minutes: null, miles: null }
    : { basis: drive.basis, minutes: Math.round(drive.minutes), miles: Math.round(drive.miles * 10) / 10 }

/** The day sheets with their drives: from the yard to the first visit, between visits, and back. */
export async function sheetsOfDay(scope: Pick<Scope, 'companyId'>, day: string) {
  const read = await readDaySheets(scope, day)
  const desk = await openTravelDesk(scope, read.timeZone)
  const sheets = read.sheets.map((sheet) => ({
    ...sheet,
    visits: sheet.visits.map(({ coordinates, ...visit }) => ({ ...visit, place: placeOfSite(coordinates, read.timeZone) })),
  }))
  const legs = sheets.map(({ visits, startsAt }): Leg[] => {
    const stops = [desk.yard, ...visits.map((visit) => visit.place), desk.yard]
    const leaves = [startsAt, ...visits.map((visit) => visit.endsAt)]
    return visits.length === 0 ? [] : leaves.map((at, n) => ({ from: stops[n] ?? null, to: stops[n + 1] ?? null, at: new Date(at) }))
  })
  const drives = await workOutDrives(desk, legs.flat())
  let from = 0
  const withDrives = sheets.map((sheet, n) => {
    const own = drives.slice(from, from + (legs[n]?.length ?? 0))
    from += own.length
    return { ...sheet, drives: own.map(row) }
  })
  return { ...read, sheets: withDrives, yard: desk.yard, paceWords: desk.pace.sentence }
}
