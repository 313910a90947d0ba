import { dateOf } from '@almanac/database/days'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type SheetRow, sheetRows } from '@almanac/database/read/day-sheet-rows'
import { addDays, dayIn, now } from '@almanac/runtime/clock'
import { notFound } from '@almanac/runtime/errors'
import { type JobToPlace, placesOnSheet } from '@almanac/service-rules/day-sheets/place-on-sheet'
import type { JobKind } from '@almanac/service-rules/jobs/job-kinds'
import { clockTimeIn, companyFacts } from './clock-times.ts'
import { offerOfSheet } from './offer-of-sheet.ts'

/** How far ahead places are looked for: so many days that have sheets, within so many days. */
const WORKING_DAYS = 10
const LOOK_AHEAD_DAYS = 30
const MOST_PLACES = 12

/** First version: earliest first, driving not counted. */
function rank(job: JobToPlace, sheets: SheetRow[], timeZone: string, notBeforeMs: number) {
  const places = []
  const unfit = []
  for (const sheet of sheets) {
    const card = { crewDayId: sheet.id, day: sheet.day, crewName: sheet.name }
    const answer = placesOnSheet(job, offerOfSheet(sheet), notBeforeMs)
    if (!answer.fits) unfit.push({ ...card, reason: answer.reason })
    else
      for (const { startMs, endMs, gapEndMs } of answer.places)
        places.push({
          ...card,
          people: sheet.members.map((member) => member.name),
          at: clockTimeIn(timeZone, new Date(startMs)),
          startsAt: new Date(startMs).toISOString(),
          endsAt: new Date(endMs).toISOString(),
          freeMinutes: Math.floor((gapEndMs - startMs) / 60_000),
        })
  }
  places.sort((a, b) => (a.startsAt < b.startsAt ? -1 : a.startsAt > b.startsAt ? 1 : a.crewName.localeCompare(b.crewName)))
  return { places: places.slice(0, MOST_PLACES), unfit }
}

/** Where a job would fit over the sheets of the next ten working days, and for each sheet where it does not, why. */
export async function bestPlaces(scope: Pick<Scope, 'companyId'>, jobId: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const job = await tx.job.findUnique({ where: { companyId_id: { companyId, id: jobId } } })
    if (!job) throw notFound('job')
    const { timeZone } = await companyFacts(tx, companyId)
    const today = dayIn(timeZone)
    const ahead = await sheetRows(tx, companyId, { day: { gte: dateOf(today), lt: dateOf(addDays(today, LOOK_AHEAD_DAYS)) } })
    const days = [...new Set(ahead.map((sheet) => sheet.day))].slice(0, WORKING_DAYS)
    const untilDay = days.at(-1) ?? today
    const wants = { kind: job.kind as JobKind, minutes: job.minutes, crewSize: job.crewSize }
    const sheets = ahead.filter((sheet) => sheet.day <= untilDay)
    return { fromDay: today, untilDay, ...rank(wants, sheets, timeZone, now().getTime()) }
  })
}
