import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { BED_FACTS, bedFacts } from '@almanac/database/read/bed-facts'
import { JOB_VALVES, siteHours, valveCardIds } from '@almanac/database/read/job-rows'
import { readTurns } from '@almanac/database/read/job-turns'
import { skillsLacking } from '@almanac/service-rules/crews/crew-skills'
import { outsideSiteHours } from '@almanac/service-rules/day-sheets/site-hours'
import { outOfTurn } from '@almanac/service-rules/jobs/job-turns'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { wallMinute } from './board-times.ts'
import { absentFromSheet, crewOnDay, readCrewBook } from './crew-on-day.ts'
import { neededBy, valveNameOf } from './job-skills.ts'
import { openPartsDesk } from './parts-day.ts'

/** What of a job says whether it follows another. */
export type Following = { id: string; afterJobId: string | null; afterLeastDays: number | null }

type Wish = {
  job: Following & { kind: string; crewSize: number; softenerId: string | null; bedId: string | null; siteId: string }
  sheet: { day: Date; startsAt: Date; endsAt: Date; vehicleId: string | null; members: { colleagueId: string }[] }
  timeZone: string
  today: string
  visitId?: string
  startsAt: Date
  endsAt: Date
}

/** What speaks against a job on a sheet and may be overruled: who is off or not down for it, parts that cannot be there by then, a visit that must come first, and the site's own hours. */
export async function planningWarnings(
  tx: Tx,
  companyId: string,
  { job, sheet, timeZone, today, visitId, startsAt, endsAt }: Wish,
): Promise<{ confirm: 'crew' | 'parts' | 'site-hours' | 'order'; words: string }[]> {
  const day = dayOf(sheet.day)
  const display = await companyFacts(tx, companyId)
  const figures = await firmFigures(tx, companyId)
  const found = job.bedId ? await tx.bed.findUnique({ where: { companyId_id: { companyId, id: job.bedId } }, include: BED_FACTS }) : null
  const softener = job.softenerId
    ? await tx.softener.findUnique({ where: { companyId_id: { companyId, id: job.softenerId } }, ...JOB_VALVES })
    : null
  const book = await readCrewBook(tx, companyId, day < today ? day : today)
  const vehicle = sheet.vehicleId ? (book.vehicles.get(sheet.vehicleId) ?? null) : null
  const members = sheet.members
    .flatMap(({ colleagueId }) => book.people.get(colleagueId) ?? [])
    .map(({ id, name }) => ({ colleagueId: id, name }))
  const standing = { day, startsAt: sheet.startsAt.toISOString(), endsAt: sheet.endsAt.toISOString(), members, vehicle }
  // That a shift is shorter than the sheet is said on the sheet; here only who is not there at all.
  const off = absentFromSheet(book, standing, display)
  const needed = neededBy({ ...job, valveCardIds: valveCardIds(softener, found?.tankId ?? null) })
  const lacking = off.length > 0 ? null : skillsLacking(needed, crewOnDay(book, standing).people, valveNameOf(figures))
  const crew = [...off, ...(lacking ? [lacking] : [])]
  const parts = await openPartsDesk(tx, companyId, today, { figures, display }, visitId)
  const late = parts.dayOf({ kind: job.kind, bed: found && bedFacts(found) })
  const site = await tx.site.findUniqueOrThrow({ where: { companyId_id: { companyId, id: job.siteId } } })
  const wall = (instant: Date) => wallMinute(timeZone, day, instant)
  const shut = outsideSiteHours(siteHours(site), day, wall(startsAt), wall(endsAt), display)
  const turn = (await readTurns(tx, companyId, [job])).get(job.id)
  const early = turn ? outOfTurn(turn, day, display) : null
  return [
    ...(crew.length > 0 ? [{ confirm: 'crew' as const, words: crew.join(' ') }] : []),
    ...(late && late.day > day
      ? [{ confirm: 'parts' as const, words: `Some parts won’t be in the stores by then: ${late.because}.` }]
      : []),
    ...(early ? [{ confirm: 'order' as const, words: early }] : []),
    ...(shut ? [{ confirm: 'site-hours' as const, words: shut }] : []),
  ]
}
