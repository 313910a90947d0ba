import type { AddAgreement } from '@almanac/contract/agreements'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { ruleOf } from '@almanac/service-rules/agreements/turn-rule'
import { companyFacts } from '../shared/company-facts.ts'

/** Writes down what comes again at a site, by a rule from its first day on, with its first price line. Turns before today are not asked for. */
export async function addAgreement(scope: Scope & { personId: string }, input: AddAgreement): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'agreements.add', input, async (tx, command) => {
    const { companyId } = scope
    const { siteId, softenerId, kind, every, firstDay, untilDay, price, notes } = input
    const site = await tx.site.findFirst({
      where: { companyId, id: siteId, archivedAt: null },
      select: { tenures: { where: { toDay: null }, select: { customerId: true }, orderBy: { id: 'asc' }, take: 1 } },
    })
    if (!site) throw notFound('site')
    if (softenerId && !(await tx.softener.count({ where: { companyId, id: softenerId, siteId, archivedAt: null } })))
      throw notFound('softener')
    if (untilDay !== null && untilDay < firstDay)
      throw new AppError('invalid', 'It can’t end before its first turn. Nothing was saved; choose a later end, or leave it blank.', {
        field: 'untilDay',
      })
    const { today } = await companyFacts(tx, companyId)
    const countsFrom = firstDay > today ? firstDay : today
    const id = newId()
    await tx.agreement.create({
      data: {
        ...{ companyId, id, siteId, softenerId, customerId: site.tenures[0]?.customerId ?? null, kind, rule: ruleOf(every, firstDay) },
        ...{ firstDay: dateOf(firstDay), countsFrom: dateOf(countsFrom), notes: notes || null, createdAt: command.at },
      },
    })
    await tx.agreementTerm.create({
      data: {
        ...{ companyId, id: newId(), agreementId: id, fromDay: dateOf(firstDay), untilDay: dateOf(untilDay) },
        ...{ priceMinor: price.minor, pricePer: price.per, createdAt: command.at },
      },
    })
    await command.audit('added', 'agreement', id, { siteId, kind, firstDay, untilDay })
    await command.announce('agreement', id, 1)
    return { id, version: 1 }
  })
}
