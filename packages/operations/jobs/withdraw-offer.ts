import type { WithdrawOffer } from '@almanac/contract/windows'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { notFound } from '@almanac/runtime/errors'
import { endOffer } from './end-offer.ts'

/** Takes an open offer back: its times are free again, and the customer's link says so. */
export async function withdrawOffer(scope: Scope & { personId: string }, input: WithdrawOffer) {
  return runCommand(scope, 'jobs.withdraw-offer', input, async (tx, command) => {
    const { companyId } = scope
    const where = { companyId_id: { companyId, id: input.offerId } }
    await lockRows(tx, companyId, 'window_offer', [input.offerId])
    const offer = await tx.windowOffer.findUnique({ where, select: { id: true, version: true, state: true } })
    if (!offer) throw notFound('offer')
    const unchanged = offer.version === input.version && offer.state === 'open'
    await expectChanged(unchanged ? 1 : 0, 'offer', input.version, { state: 'withdrawn' }, async () => offer)
    return { offerId: offer.id, version: await endOffer(tx, command, offer.id, 'withdrawn') }
  })
}
