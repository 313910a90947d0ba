import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { dayIn, instantAt } from '@almanac/units/calendar/zone-clock'
import { type ClockDisplay, formatClock } from '@almanac/units/format-clock'
import { oweCall } from '../shared/call-backs.ts'
import { companyFacts } from '../shared/company-facts.ts'

/** A visit with what its customer was promised: that the crew comes between the two instants. No promise where `promisedBy` is null. */
export type Promised = {
  id: string
  jobId: string
  startsAt: Date
  arriveFrom: Date | null
  arriveUntil: Date | null
  promisedBy: string | null
}

const OPEN = { cause: 'promise', state: 'open' } as const

/** Whether a visit that begins then keeps what was promised; true where nothing was. */
export const keepsPromise = (
  { promisedBy, arriveFrom, arriveUntil }: Omit<Promised, 'id' | 'jobId' | 'startsAt'>,
  startsAt: Date,
): boolean => promisedBy === null || arriveFrom === null || arriveUntil === null || (startsAt >= arriveFrom && startsAt <= arriveUntil)

/** Takes entries off the list: their promise is kept again, or a new one was made. */
async function closeEntries(tx: Tx, command: Command, where: { jobId?: string; visitId?: { in: string[] } }): Promise<void> {
  const { companyId, at } = command
  const open = await tx.callBack.findMany({ where: { companyId, ...OPEN, ...where }, select: { id: true, version: true } })
  for (const { id, version } of open) {
    await tx.callBack.update({
      where: { companyId_id: { companyId, id } },
      data: { state: 'kept', closedAt: at, closedBy: command.personId, version: { increment: 1 } },
    })
    await command.audit('kept', 'call-back', id)
    await command.announce('call-back', id, version + 1)
  }
}

/** Puts the customer of a lost promise on the list of whom to call, once; as done already where somebody told them. */
export async function breakPromise(
  tx: Tx,
  command: Command,
  visit: Promised,
  { told = false, note }: { told?: boolean; note?: string } = {},
) {
  const { companyId, at } = command
  if (visit.promisedBy === null) return
  if ((await tx.callBack.count({ where: { companyId, ...OPEN, visitId: visit.id } })) > 0) return
  const { siteId } = await tx.job.findUniqueOrThrow({ where: { companyId_id: { companyId, id: visit.jobId } }, select: { siteId: true } })
  const { timeZone } = await companyFacts(tx, companyId)
  const id = await oweCall(tx, command, {
    ...{ cause: 'promise', dueDay: dayIn(timeZone, at), siteId, jobId: visit.jobId, visitId: visit.id, note },
  })
  if (!told) return
  const closed = { state: 'done', outcome: 'talked', closedAt: at, closedBy: command.personId, version: { increment: 1 } }
  await tx.callBack.update({ where: { companyId_id: { companyId, id } }, data: closed })
}

/** After a visit moved: its customer goes on the list where the promise is lost by it, and off it where it is kept again. */
export async function settlePromise(tx: Tx, command: Command, visit: Promised, startsAt: Date): Promise<void> {
  if (visit.promisedBy === null) return
  if (keepsPromise(visit, startsAt)) await closeEntries(tx, command, { visitId: { in: [visit.id] } })
  else await breakPromise(tx, command, visit)
}

const NOTHING = { arriveFrom: null, arriveUntil: null, promisedBy: null, promisedAt: null, promisedPersonId: null, offerId: null }

/**
 * What a new visit of a job takes over of a promise that was lost with an earlier one: where it begins within that window the promise is given back, and its
 * customer comes off the list. A take-off that is undone loses nothing by this.
 */
export async function takeOverPromise(tx: Tx, command: Command, jobId: string, startsAt: Date) {
  const { companyId } = command
  const lost = await tx.callBack.findFirst({
    where: { companyId, ...OPEN, jobId, visit: { state: 'called-off', arriveFrom: { lte: startsAt }, arriveUntil: { gte: startsAt } } },
    include: { visit: true },
    orderBy: { id: 'desc' },
  })
  if (!lost?.visit) return NOTHING
  await closeEntries(tx, command, { visitId: { in: [lost.visit.id] } })
  const { arriveFrom, arriveUntil, promisedBy, promisedAt, promisedPersonId, offerId } = lost.visit
  return { arriveFrom, arriveUntil, promisedBy, promisedAt, promisedPersonId, offerId }
}

/** A new promise of a job stands in the place of those it lost. */
export const renewPromise = (tx: Tx, command: Command, jobId: string) => closeEntries(tx, command, { jobId })

/** What a promise made now is kept with: by telephone where a colleague makes it, by the link where the customer chose. */
export const madeNow = ({ at, personId }: Command) => ({
  promisedBy: personId ? 'phone' : 'link',
  promisedAt: at,
  promisedPersonId: personId,
})

/** What a new visit is promised with, in the place of whatever its job lost. */
export async function promiseNow(tx: Tx, command: Command, jobId: string, times: ReturnType<typeof promisedTimes>) {
  await renewPromise(tx, command, jobId)
  return { ...NOTHING, ...times, ...madeNow(command) }
}

/** The instants between which a crew is promised to come, on the day of the visit. Refused where the visit itself lies outside them. */
export function promisedTimes(startsAt: Date, { from, until }: { from: string; until: string }, display: ClockDisplay) {
  const day = dayIn(display.timeZone, startsAt)
  const [arriveFrom, arriveUntil] = [instantAt(display.timeZone, day, from), instantAt(display.timeZone, day, until)]
  if (arriveFrom >= arriveUntil)
    throw new AppError('invalid', 'The promised time must end after it begins. Nothing was changed; check both times.', { field: 'until' })
  if (startsAt < arriveFrom || startsAt > arriveUntil)
    throw new AppError(
      'conflict',
      `The visit is booked for ${formatClock(startsAt, display)}, outside what would be promised. Nothing was changed; move the visit, or promise a time around it.`,
    )
  return { arriveFrom, arriveUntil }
}
