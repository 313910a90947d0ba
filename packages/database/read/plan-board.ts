import type { Tx } from '../client.ts'
import { dateOf } from '../days.ts'
import { BED_FACTS, bedFacts } from './bed-facts.ts'
import { sheetRows } from './day-sheet-rows.ts'
import { settingsIn } from './firm-settings.ts'
import { JOB_VALVES, SITE_HOURS, siteHours, valveCardIds } from './job-rows.ts'
import { readTurns } from './job-turns.ts'

/** How many waiting jobs are planned at once, the most pressing first: more than a crew's week can hold. */
const MOST_WAITING = 120

const WAITING = {
  site: { select: { label: true, town: true, latitude: true, longitude: true, postcode: true, ...SITE_HOURS } },
  softener: JOB_VALVES,
  bed: { include: { ...BED_FACTS, forecast: { select: { chance3Months: true } } } },
} as const

type Days = { fromDay: string; untilDay: string }

/** Day sheets of some days with their visits, and the jobs that wait for a place or one of them alone. */
export async function readPlanBoard(tx: Tx, companyId: string, { fromDay, untilDay }: Days, onlyJobId?: string) {
  const sheets = await sheetRows(tx, companyId, { day: { gte: dateOf(fromDay), lte: dateOf(untilDay) } })
  const found = await tx.job.findMany({
    where: { companyId, ...(onlyJobId ? { id: onlyJobId } : { state: 'proposed', visits: { none: { state: 'offered' } } }) },
    include: WAITING,
    orderBy: [{ dueLatest: { sort: 'asc', nulls: 'last' } }, { id: 'asc' }],
    take: MOST_WAITING,
  })
  const turns = await readTurns(tx, companyId, found)
  const waiting = found.map((job) => ({
    ...{ id: job.id, version: job.version, kind: job.kind, minutes: job.minutes, crewSize: job.crewSize },
    valveCardIds: valveCardIds(job.softener, job.bed?.tankId ?? null),
    ...{ dueEarliest: job.dueEarliest, dueLatest: job.dueLatest, siteLabel: job.site.label, town: job.site.town, siteId: job.siteId },
    coordinates: { latitude: job.site.latitude, longitude: job.site.longitude, postcode: job.site.postcode },
    siteHours: siteHours(job.site),
    turn: turns.get(job.id) ?? null,
    bed: job.bed ? bedFacts(job.bed) : null,
    chance3Months: job.bed?.forecast?.chance3Months ?? null,
  }))
  const settings = await settingsIn(tx, companyId)
  const { timeZone } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { timeZone: true } })
  return { sheets, waiting, settings, timeZone }
}

export type PlanBoardRows = Awaited<ReturnType<typeof readPlanBoard>>
