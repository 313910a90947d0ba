import type { CrewVehicle } from '@almanac/contract/crews'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { BED_FACTS, bedFacts } from '@almanac/database/read/bed-facts'
import { JOB_VALVES, siteHours, valveCardIds } from '@almanac/database/read/job-rows'
import { readTurns } from '@almanac/database/read/job-turns'
import { fullestShare } from '@almanac/dispatch/slots/time-sheet'
import type { BedFacts } from '@almanac/records/bed-facts'
import { skillsLacking } from '@almanac/service-rules/crews/crew-skills'
import { outsideSiteHours } from '@almanac/service-rules/day-sheets/site-hours'
import { outOfTurn } from '@almanac/service-rules/jobs/job-turns'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { Display } from '@almanac/units/display'
import { formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import { companyFacts } from '../shared/company-facts.ts'
import { readCrewBook } from '../shared/crew-book.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { wallMinute } from './board-times.ts'
import { absentFromSheet, crewOnDay } from './crew-on-day.ts'
import type { Unusually } from './drives-of-place.ts'
import { neededBy, valveNameOf } from './job-skills.ts'
import { loadOfJob } from './load-of-job.ts'
import { openPartsDesk } from './parts-day.ts'

type Loaded = Pick<Wish, 'job' | 'sheet' | 'visitId' | 'startsAt'> & { bed: BedFacts | null; vehicle: CrewVehicle | null }

/** That the vehicle could not carry the day's material with this job, in a sentence; null where it can, or there is none. */
async function overload(
  tx: Tx,
  companyId: string,
  { job, bed, sheet, vehicle, visitId, startsAt }: Loaded,
  firm: Firm,
): Promise<string | null> {
  const own = loadOfJob({ kind: job.kind, bed }, firm)
  if (!vehicle || Math.max(own.out.ft3, own.out.lb, own.back.ft3, own.back.lb) === 0) return null
  const others = await tx.visit.findMany({
    where: { companyId, crewDayId: sheet.id, state: { not: 'called-off' }, ...(visitId ? { id: { not: visitId } } : {}) },
    include: { job: { include: { bed: { include: BED_FACTS } } } },
  })
  const stops = [
    ...others.map((one) => ({ at: one.startsAt, ...loadOfJob({ kind: one.job.kind, bed: one.job.bed && bedFacts(one.job.bed) }, firm) })),
    { at: startsAt, ...own },
  ].sort((a, b) => a.at.getTime() - b.at.getTime())
  const fullest = fullestShare({ capacity: { ft3: vehicle.volumeFt3, lb: vehicle.weightLb } }, stops)
  if (fullest <= 1 + 1e-9) return null
  const room = `${formatVolumeFt3(vehicle.volumeFt3, firm.display)} and ${formatWeightLb(vehicle.weightLb, firm.display)}`
  return Number.isFinite(fullest)
    ? `${vehicle.name} takes ${room}; with this job it would be ${formatPercent(fullest, firm.display)} full.`
    : `${vehicle.name} carries nothing, and this job has material.`
}

/** What of a job says whether it follows another. */
export type Following = { id: string; afterJobId: string | null; afterLeastDays: number | null }

type Firm = { figures: FirmFigures; display: Display }

type Wish = {
  job: Following & { kind: string; crewSize: number; softenerId: string | null; bedId: string | null; siteId: string }
  sheet: { id: string; day: Date; startsAt: Date; endsAt: Date; vehicleId: string | null; members: { colleagueId: string }[] }
  timeZone: string
  today: string
  visitId?: string
  startsAt: Date
  endsAt: Date
}

/** What speaks against a job on a sheet and may be overruled: who is off or not down for it, parts that cannot be there by then, a vehicle too full, a visit that must come first, and the site's own hours. */
export async function planningWarnings(
  tx: Tx,
  companyId: string,
  { job, sheet, timeZone, today, visitId, startsAt, endsAt }: Wish,
): Promise<Unusually[]> {
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
  const full = await overload(
    tx,
    companyId,
    { job, bed: found && bedFacts(found), sheet, vehicle, visitId, startsAt },
    { figures, display },
  )
  return [
    ...(crew.length > 0 ? [{ confirm: 'crew' as const, words: crew.join(' ') }] : []),
    ...(late && late.day > day
      ? [{ confirm: 'parts' as const, words: `Some parts won’t be in the stores by then: ${late.because}.` }]
      : []),
    ...(full ? [{ confirm: 'load' as const, words: full }] : []),
    ...(early ? [{ confirm: 'order' as const, words: early }] : []),
    ...(shut ? [{ confirm: 'site-hours' as const, words: shut }] : []),
  ]
}
