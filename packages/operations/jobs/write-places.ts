import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { instantIn } from '@almanac/units/calendar/zone-clock'
import type { ClockDisplay } from '@almanac/units/format-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { reserveKit } from '../shared/reserve-kit.ts'
import { changeState } from './change-state.ts'
import { endOf } from './end-of-visit.ts'
import { lapseOffers, withdrawOffersOf } from './end-offer.ts'
import { lockJob, stepOf } from './lock-job.ts'
import { claimSlot, lockSlot, type PlaceWanted, releasePlace } from './lock-slot.ts'
import { type Promised, settlePromise, takeOverPromise } from './promises.ts'
import { takeOffSheet } from './take-off-sheet.ts'

/** Where a visit (by its id) or a waiting job (by its own) shall stand; a null sheet takes it off. Minutes since midnight of the sheet's day. */
export type PlannedPlace = { id: string } & (
  | { crewDayId: string; day: string; startMinute: number }
  | { crewDayId: null; day: null; startMinute: null }
)

type Found = { place: PlannedPlace; visit: (Promised & { crewDayId: string; state: string }) | null; jobId: string }

async function find(tx: Tx, companyId: string, places: readonly PlannedPlace[]): Promise<Found[]> {
  const ids = places.map((place) => place.id)
  const visits = new Map((await tx.visit.findMany({ where: { companyId, id: { in: ids } } })).map((visit) => [visit.id, visit]))
  return places.map((place) => {
    const visit = visits.get(place.id) ?? null
    return { place, visit, jobId: visit?.jobId ?? place.id }
  })
}

/** When a place begins and ends, and whom and what it takes. */
async function wantedAt(tx: Tx, companyId: string, display: ClockDisplay, place: PlannedPlace, minutes: number): Promise<PlaceWanted> {
  if (place.crewDayId === null) throw new AppError('unexpected', 'A visit needs a sheet. Nothing was changed.')
  const sheet = await tx.crewDay.findUniqueOrThrow({
    where: { companyId_id: { companyId, id: place.crewDayId } },
    include: { members: { select: { colleagueId: true } } },
  })
  const startsAt = instantIn(display.timeZone, place.day, Math.min(1439, Math.round(place.startMinute)))
  const colleagueIds = sheet.members.map((member) => member.colleagueId)
  return { companyId, display, colleagueIds, vehicleId: sheet.vehicleId, startsAt, endsAt: endOf(startsAt, minutes) }
}

/**
 * Writes many places at once: locks jobs, visits and sheets in the common order, frees everything that moves, then takes the new places. Visits that stay to
 * the minute are not touched. Answers how many changed.
 */
export async function writePlaces(tx: Tx, command: Command, places: readonly PlannedPlace[]): Promise<number> {
  const { companyId } = command
  const display = await companyFacts(tx, companyId)
  const found = await find(tx, companyId, places)
  const jobIds = [...new Set(found.map((one) => one.jobId))].sort()
  await lockRows(tx, companyId, 'job', jobIds)
  await lockRows(
    tx,
    companyId,
    'visit',
    found.flatMap(({ visit }) => (visit ? [visit.id] : [])),
  )
  const sheetIds = [...new Set(found.flatMap(({ place }) => (place.crewDayId ? [place.crewDayId] : [])))]
  await lockRows(tx, companyId, 'crew_day', sheetIds, 'share')
  await lapseOffers(tx, command)
  const moves: { one: Found; wanted: PlaceWanted; job: Awaited<ReturnType<typeof lockJob>> }[] = []
  let changed = 0
  for (const one of found) {
    const { place, visit } = one
    const job = await lockJob(tx, companyId, one.jobId)
    if (place.crewDayId === null) {
      if (visit?.state !== 'booked') throw new AppError('conflict', `${job.site.label}: its visit has started. Nothing was changed.`)
      await takeOffSheet(tx, command, visit.id)
      await changeState(tx, command, job, { state: stepOf(job, 'unbook'), stateReason: null })
      changed++
      continue
    }
    // What is only offered, under way or closed stays where it stands.
    if (visit && visit.state !== 'booked') continue
    const wanted = await wantedAt(tx, companyId, display, place, job.minutes)
    const stays = visit && visit.crewDayId === place.crewDayId && visit.startsAt.getTime() === wanted.startsAt.getTime()
    if (stays) continue
    if (visit) await releasePlace(tx, companyId, visit.id)
    moves.push({ one, wanted, job })
  }
  for (const { one, wanted, job } of moves) {
    const { place, visit } = one
    const crewDayId = place.crewDayId as string
    await lockSlot(tx, wanted)
    const { startsAt, endsAt } = wanted
    if (visit) {
      await claimSlot(tx, wanted, visit.id)
      const where = { companyId_id: { companyId, id: visit.id } }
      const { version } = await tx.visit.update({ where, data: { crewDayId, startsAt, endsAt, version: { increment: 1 } } })
      await settlePromise(tx, command, visit, startsAt)
      const from = { crewDayId: visit.crewDayId, startsAt: visit.startsAt.toISOString() }
      await command.audit('moved', 'visit', visit.id, { from, to: { crewDayId, startsAt: startsAt.toISOString() } })
      await command.announce('visit', visit.id, version)
    } else {
      const state = stepOf(job, 'book')
      await withdrawOffersOf(tx, command, job.id)
      const visitId = newId()
      const promise = await takeOverPromise(tx, command, job.id, startsAt)
      await tx.visit.create({ data: { companyId, id: visitId, jobId: job.id, crewDayId, startsAt, endsAt, state: 'booked', ...promise } })
      await claimSlot(tx, wanted, visitId)
      await reserveKit(tx, command, visitId, job)
      await command.audit('booked', 'visit', visitId, { jobId: job.id, crewDayId, startsAt: startsAt.toISOString() })
      await command.announce('visit', visitId, 1)
      await changeState(tx, command, job, { state, stateReason: null })
    }
    changed++
  }
  return changed
}
