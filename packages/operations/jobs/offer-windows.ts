import type { OfferWindows } from '@almanac/contract/windows'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { formatInstant } from '@almanac/units/format-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { drivesOfPlace } from './drives-of-place.ts'
import { endOf } from './end-of-visit.ts'
import { lapseOffers, withdrawOffersOf } from './end-offer.ts'
import { lockJobAt, stepOf } from './lock-job.ts'
import { claimSlot, lockSlot } from './lock-slot.ts'
import { lockSheet, placeWanted } from './place-on-sheet.ts'

const HOUR_MS = 3_600_000

/**
 * Holds up to three times for a customer to choose from: each takes its crew and vehicle like a booked visit until one is chosen or the time
 * is up. An earlier offer for the same job is withdrawn. 409 when the job may not be booked, a crew cannot do it or someone is busy: then
 * nothing is held.
 */
export async function offerWindows(scope: Scope & { personId: string }, input: OfferWindows) {
  const { jobId, jobVersion, windowMinutes, holdHours } = input
  // Overtime that the way home takes was shown where the times were chosen; too little time between two visits nobody can hold.
  const driven = await Promise.all(
    input.places.map(async (place) => (await drivesOfPlace(scope, { ...place, jobId })).filter((one) => one.confirm === 'drive')),
  )
  return runCommand(scope, 'jobs.offer-windows', input, async (tx, command) => {
    const { companyId } = scope
    const job = await lockJobAt(tx, companyId, jobId, jobVersion, { places: input.places })
    if (job.state !== 'proposed')
      throw new AppError('conflict', 'You can only offer times for a job with no visit yet. Nothing was held; look at the job again.')
    stepOf(job, 'book')
    const sheets = []
    const places = input.places.map((place, n) => ({ ...place, drives: driven[n] ?? [] }))
    for (const { crewDayId, at, drives } of places.sort((a, b) => (a.crewDayId < b.crewDayId ? -1 : 1)))
      sheets.push({ sheet: await lockSheet(tx, companyId, crewDayId), at, drives })
    await lapseOffers(tx, command)
    await withdrawOffersOf(tx, command, jobId)
    const offerId = newId()
    const expiresAt = new Date(command.at.getTime() + holdHours * HOUR_MS)
    await tx.windowOffer.create({ data: { companyId, id: offerId, jobId, state: 'open', expiresAt, createdAt: command.at } })
    for (const { sheet, at, drives } of sheets) {
      const place = await placeWanted(tx, companyId, { job, sheet, at, confirmed: [], drives, now: command.at })
      if (place.startsAt <= expiresAt)
        throw new AppError(
          'conflict',
          `${formatInstant(place.startsAt, await companyFacts(tx, companyId))} comes before the customer’s time to choose ends. Nothing was held; hold it for a shorter time or choose a later day.`,
        )
      await lockSlot(tx, place)
      const { startsAt, endsAt } = place
      const visitId = newId()
      const arrival = { arriveFrom: startsAt, arriveUntil: endOf(startsAt, windowMinutes) }
      const data = { companyId, id: visitId, jobId, crewDayId: sheet.id, startsAt, endsAt, offerId, state: 'offered', ...arrival }
      await tx.visit.create({ data })
      await claimSlot(tx, place, visitId)
      await command.announce('visit', visitId, 1)
    }
    await command.audit('offered', 'window-offer', offerId, { jobId, windows: sheets.length, expiresAt: expiresAt.toISOString() })
    await command.announce('job', jobId, job.version)
    await command.enqueue('lapse-offers', {}, undefined, new Date(expiresAt.getTime() + 1000))
    return { offerId, version: 1 }
  })
}
