import type { RenewAgreement } from '@almanac/contract/agreements'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { lockAgreement } from './lock-agreement.ts'

const invalid = (message: string, field: string) => new AppError('invalid', `${message} Nothing was saved.`, { field })

/** Goes on with an agreement: a further price line, from a day after the last one began to its own end. Its turns go on by the same rule. */
export async function renewAgreement(scope: Scope & { personId: string }, input: RenewAgreement): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'agreements.renew', input, async (tx, command) => {
    const { companyId } = scope
    const { agreementId: id, fromDay, untilDay, price } = input
    const { term, version } = await lockAgreement(tx, companyId, input)
    if (term && fromDay <= term.fromDay) throw invalid('The last price line begins on that day or later; choose a later day.', 'fromDay')
    if (untilDay !== null && untilDay < fromDay)
      throw invalid('It can’t end before it begins; choose a later end, or leave it blank.', 'untilDay')
    await tx.agreementTerm.create({
      data: {
        ...{ companyId, id: newId(), agreementId: id, fromDay: dateOf(fromDay), untilDay: dateOf(untilDay) },
        ...{ priceMinor: price.minor, pricePer: price.per, createdAt: command.at },
      },
    })
    await tx.agreement.update({ where: { companyId_id: { companyId, id } }, data: { version: { increment: 1 } } })
    await command.audit('renewed', 'agreement', id, { fromDay, untilDay })
    await command.announce('agreement', id, version + 1)
    return { id, version: version + 1 }
  })
}
