import { inCompany, type Scope } from '@almanac/database/in-company'
import { sheetRows } from '@almanac/database/read/day-sheet-rows'
import { readFreeStock } from '@almanac/database/read/free-stock'
import { JOB_PARTS, JOB_VALVES, jobFacts, SITE_HOURS, siteHours, valveCardIds } from '@almanac/database/read/job-rows'
import { readTurns } from '@almanac/database/read/job-turns'
import { now } from '@almanac/runtime/clock'
import { notFound } from '@almanac/runtime/errors'
import { skillsLacking } from '@almanac/service-rules/crews/crew-skills'
import { placesOnSheet, type SheetToPlaceOn } from '@almanac/service-rules/day-sheets/place-on-sheet'
import { type SiteHours, siteHoursOn, siteHoursWords, takesAnyTime } from '@almanac/service-rules/day-sheets/site-hours'
import { outOfTurn } from '@almanac/service-rules/jobs/job-turns'
import { clockIn, dayIn, instantIn } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { readCrewBook } from '../shared/crew-book.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { crewOnDay } from './crew-on-day.ts'
import { neededBy, valveNameOf } from './job-skills.ts'
import { offerOfSheet } from './offer-of-sheet.ts'
import { partsDesk } from './parts-day.ts'

/** How many of the most pressing jobs are tried, and how many lines stand in one free stretch: more would drown the sheet. */
const MOST_JOBS = 200
const MOST_IN_A_STRETCH = 3

type Pressing = { dueEarliest: string | null; dueLatest: string | null }

/** Jobs whose window has begun stand first, by its end; then those to come, by its beginning. */
function byPressure(day: string) {
  const key = (job: Pressing) =>
    job.dueEarliest !== null && job.dueEarliest > day ? `2 ${job.dueEarliest}` : `1 ${job.dueLatest ?? '9999'}`
  return (a: Pressing, b: Pressing) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0)
}

/** What of a sheet's hours the site takes visits in; null where none. */
function offerWithin(offer: SheetToPlaceOn, hours: SiteHours, day: string, timeZone: string): SheetToPlaceOn | null {
  if (takesAnyTime(hours)) return offer
  const on = siteHoursOn(hours, day)
  if (!on) return null
  const at = (minute: number) => instantIn(timeZone, day, Math.min(1439, minute)).getTime()
  const [startMs, endMs] = [Math.max(offer.hours.startMs, at(on.from)), Math.min(offer.hours.endMs, at(on.until))]
  return startMs < endMs ? { ...offer, hours: { startMs, endMs } } : null
}

/** Jobs without a place that one sheet could take, each at the first free stretch it fits, and why the others don't fit. */
export async function jobsThatFit(scope: Pick<Scope, 'companyId'>, crewDayId: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const [sheet] = await sheetRows(tx, companyId, { id: crewDayId })
    if (!sheet) throw notFound('day sheet')
    const display = await companyFacts(tx, companyId)
    const { timeZone } = display
    const found = await tx.job.findMany({
      where: { companyId, state: 'proposed' },
      include: { ...JOB_PARTS, site: { select: { label: true, town: true, ...SITE_HOURS } }, softener: JOB_VALVES },
      orderBy: [{ dueLatest: { sort: 'asc', nulls: 'last' } }, { id: 'asc' }],
      take: MOST_JOBS,
    })
    const at = now()
    const today = dayIn(timeZone, at)
    const figures = await firmFigures(tx, companyId)
    const crew = crewOnDay(await readCrewBook(tx, companyId, sheet.day < today ? sheet.day : today), sheet)
    const jobs = found.map((job) => ({
      ...jobFacts(job),
      siteHours: siteHours(job.site),
      valveCardIds: valveCardIds(job.softener, job.bed?.tankId ?? null),
      chance3Months: job.bed?.forecast?.chance3Months ?? null,
    }))
    const offer = offerOfSheet(sheet, crew, timeZone)
    const notBeforeMs = at.getTime()
    const firm = { figures, display }
    const stock = await readFreeStock(tx, companyId)
    const turns = await readTurns(tx, companyId, found)
    const inStretch = new Map<number, number>()
    const left = new Map<string, number>()
    const fits = []
    for (const job of jobs.sort(byPressure(sheet.day))) {
      const lacking = skillsLacking(neededBy(job), crew.people, valveNameOf(figures))
      // Each job is told of what is on the shelf now: which of them takes it is for the dispatcher to say.
      const late = partsDesk(stock, today, firm).dayOf(job)
      const turn = turns.get(job.id)
      const early = turn ? outOfTurn(turn, sheet.day, display) : null
      const reason = lacking ?? early ?? (late && late.day > sheet.day ? `Parts: ${late.because}.` : null)
      const within = offerWithin(offer, job.siteHours, sheet.day, timeZone)
      const answer =
        reason !== null
          ? { fits: false as const, reason }
          : within
            ? placesOnSheet(job, within, notBeforeMs)
            : { fits: false as const, reason: `Visiting hours are ${siteHoursWords(job.siteHours, display)}.` }
      const place = answer.fits ? answer.places.find((one) => (inStretch.get(one.gapEndMs) ?? 0) < MOST_IN_A_STRETCH) : null
      if (!place) {
        const reason = answer.fits ? 'Also fits, less urgent.' : answer.reason
        left.set(reason, (left.get(reason) ?? 0) + 1)
        continue
      }
      inStretch.set(place.gapEndMs, (inStretch.get(place.gapEndMs) ?? 0) + 1)
      fits.push({
        ...{ jobId: job.id, jobVersion: job.version, kind: job.kind, siteId: job.siteId, siteLabel: job.siteLabel, town: job.town },
        ...{ minutes: job.minutes, crewSize: job.crewSize, dueEarliest: job.dueEarliest, dueLatest: job.dueLatest },
        at: clockIn(timeZone, new Date(place.startMs)),
        startsAt: new Date(place.startMs).toISOString(),
        endsAt: new Date(place.endMs).toISOString(),
        freeUntil: new Date(place.gapEndMs).toISOString(),
        chance3Months: job.chance3Months,
      })
    }
    return { timeZone, fits, left: [...left].map(([reason, count]) => ({ reason, jobs: count })) }
  })
}
