import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import type { AgreementEnd } from '@almanac/records/agreement'

/** Ends the agreements that still run at a site or with some customers: nobody is sent to whoever did not agree to it. Their turns before stay what they are. */
export async function endAgreements(
  tx: Tx,
  command: Command,
  of: { siteId: string } | { customerId: { in: string[] } },
  lastDay: string,
  why: Extract<AgreementEnd, 'sold' | 'erased'>,
): Promise<void> {
  const { companyId } = command
  const running = await tx.agreement.findMany({ where: { companyId, ...of, endedDay: null }, select: { id: true } })
  const ids = running.map((one) => one.id)
  await tx.agreement.updateMany({
    where: { companyId, id: { in: ids } },
    data: { endedDay: dateOf(lastDay), endWhy: why, version: { increment: 1 } },
  })
  for (const id of ids) {
    await command.audit('ended', 'agreement', id, { lastDay, why })
    await command.announce('agreement', id)
  }
}
