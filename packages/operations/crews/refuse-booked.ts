import type { Tx } from '@almanac/database/client'
import { AppError } from '@almanac/runtime/errors'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn, instantAt } from '@almanac/units/calendar/zone-clock'
import { formatClock, formatClocks } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { companyFacts } from '../shared/company-facts.ts'

type Away = { colleagueId: string | null; vehicleId: string | null; fromDay: string; untilDay: string | null }

/** More would drown the question. */
const MOST_NAMED = 8

const VISIT = {
  select: { promisedBy: true, arriveFrom: true, arriveUntil: true, job: { select: { site: { select: { label: true } } } } },
} as const

/** Asks before a person or a vehicle is away on days with booked visits: which they are, and what their customers were promised. */
export async function refuseBooked(tx: Tx, companyId: string, { colleagueId, vehicleId, fromDay, untilDay }: Away): Promise<void> {
  const display = await companyFacts(tx, companyId)
  const { timeZone, today } = display
  const begins = instantAt(timeZone, fromDay > today ? fromDay : today, '00:00')
  const startsAt = { gte: begins, ...(untilDay ? { lt: instantAt(timeZone, addDays(untilDay, 1), '00:00') } : {}) }
  const where = { companyId, released: false, startsAt, visit: { state: 'booked' } }
  const orderBy = [{ startsAt: 'asc' as const }, { id: 'asc' as const }]
  const taken = colleagueId
    ? await tx.assignment.findMany({ where: { ...where, colleagueId }, include: { visit: VISIT }, orderBy })
    : await tx.vehicleUse.findMany({ where: { ...where, vehicleId: vehicleId ?? '' }, include: { visit: VISIT }, orderBy })
  if (taken.length === 0) return
  const named = taken.slice(0, MOST_NAMED).map(({ startsAt: at, visit: { job, promisedBy, arriveFrom, arriveUntil } }) => {
    const told = promisedBy && arriveFrom && arriveUntil ? ` (promised ${formatClocks(arriveFrom, arriveUntil, display)})` : ''
    return `${formatNearDay(dayIn(timeZone, at), display)} ${formatClock(at, display)}, ${job.site.label}${told}`
  })
  const more = taken.length > MOST_NAMED ? `; and ${taken.length - MOST_NAMED} more` : ''
  throw new AppError(
    'conflict',
    `${taken.length === 1 ? 'One visit is' : `${taken.length} visits are`} booked then: ${named.join('; ')}${more}. Nothing was saved. Save anyway? They stay on their sheets until you move them.`,
    { confirm: ['crew'] },
  )
}
