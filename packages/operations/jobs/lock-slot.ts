import type { Tx } from '@almanac/database/client'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { type ClockDisplay, formatClock } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'

/** Who and what a visit takes, from when to when. */
export type PlaceWanted = {
  companyId: string
  display: ClockDisplay
  colleagueIds: string[]
  vehicleId: string | null
  startsAt: Date
  endsAt: Date
}

type Busy = { who: string; site: string; startsAt: Date; endsAt: Date; entity: 'colleague' | 'vehicle'; id: string }

/** Locks the people's rows, then the vehicle's, so that attempts at the same time stand in line. */
async function lockInOrder(tx: Tx, { companyId, colleagueIds, vehicleId }: PlaceWanted): Promise<void> {
  await lockRows(tx, companyId, 'colleague', colleagueIds)
  if (vehicleId) await lockRows(tx, companyId, 'vehicle', [vehicleId])
}

const WHERE = { visit: { select: { job: { select: { site: { select: { label: true } } } } } } } as const

async function whoIsBusy(tx: Tx, wanted: PlaceWanted): Promise<Busy[]> {
  const { companyId, colleagueIds, vehicleId, startsAt, endsAt } = wanted
  const overlapping = { companyId, released: false, startsAt: { lt: endsAt }, endsAt: { gt: startsAt } }
  const people = await tx.assignment.findMany({
    where: { ...overlapping, colleagueId: { in: colleagueIds } },
    include: { colleague: { select: { name: true } }, ...WHERE },
    orderBy: [{ startsAt: 'asc' }, { colleague: { name: 'asc' } }],
  })
  const vehicles = vehicleId
    ? await tx.vehicleUse.findMany({
        where: { ...overlapping, vehicleId },
        include: { vehicle: { select: { name: true } }, ...WHERE },
        orderBy: { startsAt: 'asc' },
      })
    : []
  const common = (one: (typeof people)[number] | (typeof vehicles)[number]) => ({
    site: one.visit.job.site.label,
    startsAt: one.startsAt,
    endsAt: one.endsAt,
  })
  return [
    ...people.map((one) => ({ ...common(one), who: one.colleague.name, entity: 'colleague' as const, id: one.colleagueId })),
    ...vehicles.map((one) => ({ ...common(one), who: one.vehicle.name, entity: 'vehicle' as const, id: one.vehicleId })),
  ]
}

/** "Ruth Ames and Callum Orr are at Orchard Lane 14 from 10:00 to 12:20." One sentence for each visit that stands in the way. */
function busySentences(busy: Busy[], display: ClockDisplay, day: string): string {
  const visits = new Map<string, Busy[]>()
  for (const one of busy) {
    const key = `${one.site} ${one.startsAt.toISOString()}`
    visits.set(key, [...(visits.get(key) ?? []), one])
  }
  return [...visits.values()]
    .map((group) => {
      const [first] = group
      if (!first) return ''
      const names = group.map((one) => one.who)
      const who = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)} are` : `${names[0]} is`
      const on = dayIn(display.timeZone, first.startsAt)
      const at = on === day ? first.site : `${first.site} on ${formatNearDay(on, display)}`
      return `${who} at ${at} from ${formatClock(first.startsAt, display)} to ${formatClock(first.endsAt, display)}.`
    })
    .join(' ')
}

/**
 * Makes sure that people and vehicle are free, and keeps it so until the transaction ends. Else 409, saying who is busy where and when.
 * The exclusion constraints have the last word all the same.
 */
export async function lockSlot(tx: Tx, wanted: PlaceWanted): Promise<void> {
  await lockInOrder(tx, wanted)
  const busy = await whoIsBusy(tx, wanted)
  if (busy.length === 0) return
  const words = busySentences(busy, wanted.display, dayIn(wanted.display.timeZone, wanted.startsAt))
  throw new AppError('conflict', `${words} Nothing was changed; choose another time or crew.`, {
    busy: busy.map((one) => ({ ...one, startsAt: one.startsAt.toISOString(), endsAt: one.endsAt.toISOString() })),
  })
}

/** Writes who and what a visit takes; `lockSlot` comes before. */
export async function claimSlot(tx: Tx, wanted: PlaceWanted, visitId: string): Promise<void> {
  const { companyId, colleagueIds, vehicleId, startsAt, endsAt } = wanted
  const times = { companyId, visitId, startsAt, endsAt }
  await tx.assignment.createMany({ data: [...colleagueIds].sort().map((colleagueId) => ({ ...times, id: newId(), colleagueId })) })
  if (vehicleId) await tx.vehicleUse.create({ data: { ...times, id: newId(), vehicleId } })
}

/** Frees everyone and everything a visit took; the rows stay as history. */
export async function releasePlace(tx: Tx, companyId: string, visitId: string): Promise<void> {
  const where = { companyId, visitId, released: false }
  await tx.assignment.updateMany({ where, data: { released: true } })
  await tx.vehicleUse.updateMany({ where, data: { released: true } })
}
