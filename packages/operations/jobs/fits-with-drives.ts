import { inCompany, type Scope } from '@almanac/database/in-company'
import { sheetRows } from '@almanac/database/read/day-sheet-rows'
import { notFound } from '@almanac/runtime/errors'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { readCrewBook } from '../shared/crew-book.ts'
import { placeOfSite } from '../shared/place-of-site.ts'
import { crewOnDay } from './crew-on-day.ts'
import { jobsThatFit } from './jobs-that-fit.ts'
import { type Drive, openTravelDesk, pointOf, workOutDrives } from './travel-desk.ts'

const MINUTE_MS = 60_000
const STEP_MS = 5 * MINUTE_MS

const sum = (...drives: Drive[]) =>
  drives.reduce<number | null>((all, { minutes }) => (all === null || minutes === null ? null : all + minutes), 0)

/**
 * The jobs that would fit into a sheet, each with the minutes of driving it adds, and begun when the crew can be there: a start is put off by the drive,
 * and what the stretch has no room for with that and the drive on does not fit.
 */
export async function fitsWithDrives(scope: Pick<Scope, 'companyId'>, crewDayId: string) {
  const { fits, left, timeZone } = await jobsThatFit(scope, crewDayId)
  const { sheet, coordinates, home } = await inCompany(scope, async (tx) => {
    const [found] = await sheetRows(tx, scope.companyId, { id: crewDayId })
    if (!found) throw notFound('day sheet')
    const sites = await tx.site.findMany({
      where: { companyId: scope.companyId, id: { in: fits.map((fit) => fit.siteId) } },
      select: { id: true, latitude: true, longitude: true, postcode: true },
    })
    const { home } = crewOnDay(await readCrewBook(tx, scope.companyId, found.day), found)
    return { sheet: found, home, coordinates: new Map(sites.map((site) => [site.id, site])) }
  })
  const desk = await openTravelDesk(scope, timeZone)
  const start = home ? pointOf(home) : desk.yard
  const at = (known: { latitude: number | null; longitude: number | null; postcode: string | null } | undefined) => {
    const place = known ? placeOfSite(known, timeZone) : null
    return place && pointOf(place)
  }
  const legs = fits.flatMap((fit) => {
    const before = sheet.visits.findLast((visit) => visit.endsAt <= fit.startsAt)
    const after = sheet.visits.find((visit) => visit.startsAt >= fit.endsAt)
    const from = before ? at(before.coordinates) : start
    const to = after ? at(after.coordinates) : start
    const here = at(coordinates.get(fit.siteId))
    const when = new Date(fit.startsAt)
    return [
      { from, to: here, at: when },
      { from: here, to, at: when },
      { from, to, at: when },
    ]
  })
  const drives = await workOutDrives(desk, legs)
  const placed = fits.flatMap((fit, n) => {
    const [there, on, instead] = drives.slice(3 * n, 3 * n + 3) as [Drive, Drive, Drive]
    const [added, passing] = [sum(there, on), sum(instead)]
    const startMs = Math.ceil((Date.parse(fit.startsAt) + (there.minutes ?? 0) * MINUTE_MS) / STEP_MS) * STEP_MS
    const endMs = startMs + fit.minutes * MINUTE_MS
    const fitsLater = endMs + (on.minutes ?? 0) * MINUTE_MS <= Date.parse(fit.freeUntil)
    // A stretch that the drives do not leave room in is none.
    if (!fitsLater) return []
    const begins = new Date(startMs)
    return [
      {
        ...fit,
        at: clockIn(timeZone, begins),
        startsAt: begins.toISOString(),
        endsAt: new Date(begins.getTime() + fit.minutes * MINUTE_MS).toISOString(),
        addedDriveMinutes: added === null || passing === null ? null : Math.max(0, Math.round(added - passing)),
      },
    ]
  })
  const tooFar = fits.length - placed.length
  return {
    fits: placed,
    left: tooFar > 0 ? [...left, { reason: 'Free time is too short with the drives there and on.', jobs: tooFar }] : left,
  }
}
