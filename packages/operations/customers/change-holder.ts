import type { ChangeHolder } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { companyFacts } from '../shared/company-facts.ts'
import { endAgreements } from '../shared/end-agreements.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { takeHolder } from './take-holder.ts'

/**
 * The house is sold: the present tenure ends the day before, the new one begins. The softener and its beds stay; contacts that belonged to this site and the
 * one who left are put away, so that no reminder goes to them.
 */
export async function changeHolder(
  scope: Scope & { personId: string },
  input: ChangeHolder,
): Promise<{ tenureId: string; customerId: string }> {
  return runCommand(scope, 'customers.change-holder', input, async (tx, command) => {
    const { companyId } = scope
    const { siteId, fromDay } = input
    const site = await tx.site.findFirst({ where: { companyId, id: siteId, archivedAt: null }, select: { id: true } })
    if (!site) throw notFound('site')
    const { today } = await companyFacts(tx, companyId)
    // Whoever holds it with an open end is the customer now: one who is still to come would be called and reminded at once.
    if (fromDay > today)
      throw new AppError('invalid', 'A new customer can’t begin in the future. Nothing was changed; transfer the site on that day.', {
        field: 'fromDay',
      })
    const left = await endTenure(tx, companyId, input, command.at)
    const customerId = await takeHolder(tx, command, input.holder, today)
    if (customerId === left) throw new AppError('conflict', 'This is already the site’s customer. Nothing was changed; choose another one.')
    const tenureId = newId()
    await tx.tenure.create({ data: { companyId, id: tenureId, siteId, customerId, fromDay: dateOf(fromDay) } })
    // Who bought the house agreed to nothing: the list of what ends soon asks whether they want it.
    await endAgreements(tx, command, { siteId }, addDays(fromDay, -1), 'sold')
    await rewriteSiteTokens(tx, companyId, [siteId])
    await command.audit('changed hands', 'site', siteId, { fromDay, from: left, to: customerId, tenureId })
    await command.announce('site', siteId)
    await command.enqueue('raise-reminders', {}, companyId)
    return { tenureId, customerId }
  })
}

/** Ends the open tenure, if there is one, and puts away the contacts of that customer at this site alone. Answers who left. */
async function endTenure(tx: Tx, companyId: string, input: ChangeHolder, at: Date): Promise<string | null> {
  const { siteId, fromDay, tenureVersion } = input
  const open = await tx.tenure.findFirst({ where: { companyId, siteId, toDay: null } })
  if (!open && tenureVersion === null) return null
  const toDay = addDays(fromDay, -1)
  const since = dayOf(open?.fromDay ?? null)
  if (since !== null && since > toDay)
    throw new AppError('invalid', `The present customer has had this site since ${since}. Nothing was changed; choose a later day.`, {
      field: 'fromDay',
    })
  const { count } = await tx.tenure.updateMany({
    where: { companyId, siteId, toDay: null, version: tenureVersion ?? -1 },
    data: { toDay: dateOf(toDay), version: { increment: 1 } },
  })
  await expectChanged(count, 'tenure', tenureVersion ?? 0, { fromDay }, async () => open && { version: open.version, fromDay: since })
  if (!open) return null
  await tx.contact.updateMany({
    where: { companyId, siteId, customerId: open.customerId, archivedAt: null },
    data: { archivedAt: at, version: { increment: 1 } },
  })
  return open.customerId
}
