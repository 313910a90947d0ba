import { inCompany, type Scope } from '@almanac/database/in-company'
import { sheetRows } from '@almanac/database/read/day-sheet-rows'
import type { Unusual } from '@almanac/records/day-plan'
import { instantAt } from '@almanac/units/calendar/zone-clock'
import { type ClockDisplay, formatClock, formatDuration } from '@almanac/units/format-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { readCrewBook } from '../shared/crew-book.ts'
import { placeOfSite } from '../shared/place-of-site.ts'
import { crewOnDay } from './crew-on-day.ts'
import { openTravelDesk, pointOf, workOutDrives } from './travel-desk.ts'

/** Something that speaks against a place and may be overruled. */
export type Unusually = { confirm: Unusual; words: string }

/** `crewDayId` and `minutes` left out: as the visit stands. */
type Asked = { crewDayId?: string; at: string; minutes?: number } & ({ jobId: string } | { visitId: string })

const MINUTE_MS = 60_000
/** Drives are told in whole minutes. */
const ROUNDING = 0.5

const SITE = { select: { label: true, latitude: true, longitude: true, postcode: true } } as const

async function read({ companyId }: Pick<Scope, 'companyId'>, asked: Asked) {
  return inCompany({ companyId }, async (tx) => {
    const visit =
      'visitId' in asked
        ? await tx.visit.findUnique({
            where: { companyId_id: { companyId, id: asked.visitId } },
            select: { id: true, jobId: true, crewDayId: true },
          })
        : null
    const jobId = 'jobId' in asked ? asked.jobId : visit?.jobId
    const job =
      jobId && (await tx.job.findUnique({ where: { companyId_id: { companyId, id: jobId } }, select: { minutes: true, site: SITE } }))
    const crewDayId = asked.crewDayId ?? visit?.crewDayId
    const [sheet] = crewDayId ? await sheetRows(tx, companyId, { id: crewDayId }) : []
    // What is not there the command itself refuses.
    if (!job || !sheet) return null
    const display = await companyFacts(tx, companyId)
    const { home } = crewOnDay(await readCrewBook(tx, companyId, sheet.day), sheet)
    return { job, sheet, display, home, others: sheet.visits.filter((one) => one.id !== visit?.id) }
  })
}

/**
 * What the drives say against a job at a clock time of a sheet: too little time from the visit before or to the one after, a crew that would leave before its
 * day begins or come home after it ends. Drives that nobody knows say nothing. Outside any transaction, since a travel server may be asked.
 */
export async function drivesOfPlace(scope: Pick<Scope, 'companyId'>, asked: Asked): Promise<Unusually[]> {
  const found = await read(scope, asked)
  if (!found) return []
  const { job, sheet, display, home, others } = found
  const { timeZone } = display
  const startMs = instantAt(timeZone, sheet.day, asked.at).getTime()
  const endMs = startMs + (asked.minutes ?? job.minutes) * MINUTE_MS
  const before = others.findLast((one) => Date.parse(one.startsAt) < startMs)
  const after = others.find((one) => Date.parse(one.startsAt) >= startMs)
  const desk = await openTravelDesk(scope, timeZone)
  const start = home ? pointOf(home) : desk.yard
  const at = (known: Parameters<typeof placeOfSite>[0]) => {
    const place = placeOfSite(known, timeZone)
    return place && pointOf(place)
  }
  const here = at(job.site)
  const [there, on] = await workOutDrives(desk, [
    { from: before ? at(before.coordinates) : start, to: here, at: new Date(before?.endsAt ?? sheet.startsAt) },
    { from: here, to: after ? at(after.coordinates) : start, at: new Date(endMs) },
  ])
  return [
    ...between(there?.minutes ?? null, before ? startMs - Date.parse(before.endsAt) : null, `from ${before?.siteLabel}`, display),
    ...between(on?.minutes ?? null, after ? Date.parse(after.startsAt) - endMs : null, `on to ${after?.siteLabel}`, display),
    ...(before ? [] : leaves(startMs - (there?.minutes ?? 0) * MINUTE_MS, startMs, sheet.startsAt, display)),
    ...(after ? [] : comesHome(endMs + (on?.minutes ?? 0) * MINUTE_MS, endMs, sheet.endsAt, display)),
  ]
}

/** Too little time for a drive between two visits; of those that overlap the booking itself says so. */
function between(minutes: number | null, roomMs: number | null, way: string, display: ClockDisplay): Unusually[] {
  if (minutes === null || roomMs === null || roomMs < 0 || minutes <= roomMs / MINUTE_MS + ROUNDING) return []
  const [takes, has] = [formatDuration(Math.round(minutes), display), formatDuration(roomMs / MINUTE_MS, display)]
  return [{ confirm: 'drive', words: `The drive ${way} takes ${takes}, and there are ${has} for it.` }]
}

/** Hours begin and end at the yard. A visit that lies outside them itself is told as such by the booking. */
function leaves(leavesMs: number, startMs: number, begins: string, display: ClockDisplay): Unusually[] {
  const beginsMs = Date.parse(begins)
  if (startMs < beginsMs || leavesMs >= beginsMs - ROUNDING * MINUTE_MS) return []
  const words = `The crew would leave at ${formatClock(leavesMs, display)}, before its day begins at ${formatClock(begins, display)}.`
  return [{ confirm: 'outside-hours', words }]
}

function comesHome(homeMs: number, endMs: number, ends: string, display: ClockDisplay): Unusually[] {
  const endsMs = Date.parse(ends)
  if (endMs > endsMs || homeMs <= endsMs + ROUNDING * MINUTE_MS) return []
  const words = `The crew would be back at ${formatClock(homeMs, display)}, after its day ends at ${formatClock(ends, display)}.`
  return [{ confirm: 'outside-hours', words }]
}
