import type { EndAgreement } from '@almanac/contract/agreements'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { lockAgreement } from './lock-agreement.ts'

/** Ends an agreement with a day: turns due later are no longer proposed, and those before stay to be done. One entered by mistake leaves none. */
export async function endAgreement(scope: Scope & { personId: string }, input: EndAgreement): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'agreements.end', input, async (tx, command) => {
    const { companyId } = scope
    const { agreementId: id, lastDay, why } = input
    const { version } = await lockAgreement(tx, companyId, input)
    await tx.agreement.update({
      where: { companyId_id: { companyId, id } },
      data: { endedDay: dateOf(lastDay), endWhy: why, version: { increment: 1 } },
    })
    await command.audit('ended', 'agreement', id, { lastDay, why })
    await command.announce('agreement', id, version + 1)
    return { id, version: version + 1 }
  })
}
