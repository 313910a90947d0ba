import type { DaySheet } from '@almanac/contract/day-sheets'
import type { Scope } from '@almanac/database/in-company'
import { readDaySheets } from '@almanac/database/read/day-sheets'
import { placeOfSite } from '../shared/place-of-site.ts'
import { type Drive, type Leg, openTravelDesk, pointOf, workOutDrives } from './travel-desk.ts'

const rounded = ({ basis, minutes, miles }: Drive): DaySheet['drives'][number] => ({
  basis,
  minutes: minutes === null ? null : Math.round(minutes),
  miles: miles === null ? null : Math.round(miles * 10) / 10,
})

/** The day sheets with their drives: from the yard to the first visit, between visits, and back. */
export async function sheetsOfDay(scope: Pick<Scope, 'companyId'>, day: string) {
  const read = await readDaySheets(scope, day)
  const desk = await openTravelDesk(scope, read.timeZone)
  const sheets = read.sheets.map((sheet) => ({
    ...sheet,
    visits: sheet.visits.map(({ coordinates, ...visit }) => ({ ...visit, place: placeOfSite(coordinates, read.timeZone) })),
  }))
  const legs = sheets.map(({ visits, startsAt }): Leg[] => {
    const stops = [desk.yard, ...visits.map((visit) => visit.place && pointOf(visit.place)), desk.yard]
    const leaves = [startsAt, ...visits.map((visit) => visit.endsAt)]
    return visits.length === 0 ? [] : leaves.map((at, n) => ({ from: stops[n] ?? null, to: stops[n + 1] ?? null, at: new Date(at) }))
  })
  const drives = await workOutDrives(desk, legs.flat())
  let from = 0
  const withDrives = sheets.map((sheet, n) => {
    const own = drives.slice(from, from + (legs[n]?.length ?? 0))
    from += own.length
    return { ...sheet, drives: own.map(rounded) }
  })
  return { ...read, sheets: withDrives, yard: desk.yard && { latitude: desk.yard.lat, longitude: desk.yard.lon }, paceWords: desk.sentence }
}
