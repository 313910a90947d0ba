import type { Tx } from '@almanac/database/client'
import { JOB_VALVES, valveCardIds } from '@almanac/database/read/job-rows'
import type { Unusual } from '@almanac/records/day-plan'
import { AppError } from '@almanac/runtime/errors'
import { skillsLacking } from '@almanac/service-rules/crews/crew-skills'
import { type ClockDisplay, formatClock, formatClocks } from '@almanac/units/format-clock'
import { readCrewBook } from '../shared/crew-book.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { neededBy, valveNameOf } from './job-skills.ts'

const HIT = {
  job: { include: { site: { select: { label: true } }, softener: JOB_VALVES, bed: { select: { tankId: true } } } },
} as const

type Change = {
  crewDayId: string
  before: { day: string; colleagueIds: string[] }
  colleagueIds: string[]
  startsAt: Date
  endsAt: Date
}

const bookedOn = (tx: Tx, companyId: string, crewDayId: string) =>
  tx.visit.findMany({
    where: { companyId, crewDayId, state: 'booked' },
    include: HIT,
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
  })
type Booked = Awaited<ReturnType<typeof bookedOn>>[number]

/** A visit that a change of its sheet hits, and why. */
type Hit = { visit: Booked; why: string }

/**
 * The booked visits that a change of a sheet hits: those that lie outside its new hours and did not before, and those that the people who stay may not do
 * while those who stood there might.
 */
export async function hitByChange(tx: Tx, companyId: string, change: Change): Promise<{ outside: Hit[]; lacking: Hit[] }> {
  const { crewDayId, before, colleagueIds, startsAt, endsAt } = change
  const sheet = await tx.crewDay.findUniqueOrThrow({ where: { companyId_id: { companyId, id: crewDayId } } })
  const visits = await bookedOn(tx, companyId, crewDayId)
  const lies = (visit: Booked, from: Date, until: Date) => visit.startsAt < from || visit.endsAt > until
  const outside = visits
    .filter((visit) => lies(visit, startsAt, endsAt) && !lies(visit, sheet.startsAt, sheet.endsAt))
    .map((visit) => ({ visit, why: 'outside these hours' }))
  if (before.colleagueIds.join() === colleagueIds.join()) return { outside, lacking: [] }
  const { people } = await readCrewBook(tx, companyId, before.day)
  const figures = await firmFigures(tx, companyId)
  const of = (ids: readonly string[]) => ids.flatMap((id) => people.get(id) ?? [])
  const lacking = visits.flatMap((visit) => {
    const { kind, crewSize, softener, bed } = visit.job
    const needed = neededBy({ kind, crewSize, valveCardIds: valveCardIds(softener, bed?.tankId ?? null) })
    const words = (ids: readonly string[]) => skillsLacking(needed, of(ids), valveNameOf(figures))
    const why = words(before.colleagueIds) === null ? words(colleagueIds) : null
    return why ? [{ visit, why }] : []
  })
  return { outside, lacking }
}

/** "Weir Road 3 at 8:10 AM (promised 8:00 – 10:00 AM)". */
function visitWords({ job, startsAt, promisedBy, arriveFrom, arriveUntil }: Booked, display: ClockDisplay): string {
  const told = promisedBy && arriveFrom && arriveUntil ? ` (promised ${formatClocks(arriveFrom, arriveUntil, display)})` : ''
  return `${job.site.label} at ${formatClock(startsAt, display)}${told}`
}

/** Asks before visits are hit: who, when, what was promised, and what follows. */
export function refuseHits(
  hit: { outside: readonly Hit[]; lacking: readonly Hit[] },
  confirmed: readonly Unusual[],
  display: ClockDisplay,
): void {
  const outside = hit.outside.map(({ visit }) => visitWords(visit, display))
  const promised = hit.outside.some(({ visit }) => visit.promisedBy !== null)
  const found: { confirm: Unusual; words: string }[] = [
    ...(outside.length > 0
      ? [
          {
            confirm: promised ? ('promise' as const) : ('outside-hours' as const),
            words: `Outside these hours: ${outside.join('; ')}.${promised ? ' Whoever was promised goes on the list to call.' : ''}`,
          },
        ]
      : []),
    ...hit.lacking.map(({ visit, why }) => ({ confirm: 'crew' as const, words: `${visitWords(visit, display)}: ${why}` })),
  ]
  const left = found.filter((one) => !confirmed.includes(one.confirm))
  if (left.length === 0) return
  const message = `${left.map((one) => one.words).join(' ')} Nothing was changed. Save anyway?`
  throw new AppError('conflict', message, { confirm: [...new Set(left.map((one) => one.confirm))] })
}
