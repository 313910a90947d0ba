import type { ConfirmWindow } from '@almanac/contract/windows'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Command, commandTools, runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError, notFound } from '@almanac/runtime/errors'
import { reserveKit } from '../shared/reserve-kit.ts'
import { changeState } from './change-state.ts'
import { endOffer } from './end-offer.ts'
import { lockJob, stepOf } from './lock-job.ts'
import { madeNow, renewPromise } from './promises.ts'

/** The offer with its job, both locked in the common order. */
async function lockOffer(tx: Tx, companyId: string, offerId: string) {
  const where = { companyId_id: { companyId, id: offerId } }
  const named = await tx.windowOffer.findUnique({ where, select: { jobId: true } })
  if (!named) throw notFound('offer')
  const job = await lockJob(tx, companyId, named.jobId)
  await lockRows(tx, companyId, 'window_offer', [offerId])
  return { job, offer: await tx.windowOffer.findUniqueOrThrow({ where }) }
}

type Locked = Awaited<ReturnType<typeof lockOffer>>

const over = (message: string) => new AppError('conflict', `${message} Nothing was booked; please ring us for another time.`)

/** Books the chosen window; the others are free again. */
async function book(tx: Tx, command: Command, { job, offer }: Locked, visitId: string) {
  const { companyId } = command
  const visit = await tx.visit.findFirst({ where: { companyId, id: visitId, offerId: offer.id } })
  if (!visit) throw notFound('visit')
  // The same choice sent twice is the same choice.
  if (offer.state === 'confirmed' && visit.state === 'booked') return { visitId, jobId: job.id, jobVersion: job.version }
  if (offer.state === 'confirmed') throw over('Another of these times was chosen already.')
  if (offer.state !== 'open' || offer.expiresAt <= command.at) throw over('These times are no longer held.')
  const state = stepOf(job, 'book')
  const changed = await tx.visit.update({
    where: { companyId_id: { companyId, id: visitId } },
    data: { state: 'booked', ...madeNow(command), version: { increment: 1 } },
  })
  await renewPromise(tx, command, job.id)
  await endOffer(tx, command, offer.id, 'confirmed')
  await reserveKit(tx, command, visitId, job)
  await command.audit('booked', 'visit', visitId, { jobId: job.id, crewDayId: visit.crewDayId, offerId: offer.id })
  await command.announce('visit', visitId, changed.version)
  const after = await changeState(tx, command, job, { state, stateReason: null })
  return { visitId, jobId: job.id, jobVersion: after.version }
}

/** Books what the customer chose on the phone. */
export async function confirmWindow(scope: Scope & { personId: string }, input: ConfirmWindow) {
  return runCommand(scope, 'jobs.confirm-window', input, async (tx, command) => {
    const locked = await lockOffer(tx, scope.companyId, input.offerId)
    const { id, version, state } = locked.offer
    await expectChanged(version === input.version ? 1 : 0, 'offer', input.version, { visitId: input.visitId }, async () => ({
      ...{ id, version, state },
    }))
    return book(tx, command, locked, input.visitId)
  })
}

/** Books what the customer chose by the link; `offerId` comes from its signed token. Choosing the same twice changes nothing more. */
export async function chooseWindow({ companyId, offerId }: { companyId: string; offerId: string }, visitId: string) {
  return inCompany({ companyId }, async (tx) => {
    const command = commandTools(tx, { companyId, personId: null }, 'jobs.choose-window', null)
    return book(tx, command, await lockOffer(tx, companyId, offerId), visitId)
  })
}
