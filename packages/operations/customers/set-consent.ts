import type { SetConsent } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

/** Keeps what a contact answered about one channel, with where and since when; the audit trail keeps each answer. */
export async function setConsent(scope: Scope & { personId: string }, input: SetConsent): Promise<{ id: string; version: number }> {
  const { contactId, channel, granted, source, sinceDay, version } = input
  return runCommand(scope, 'customers.set-consent', input, async (tx, command) => {
    const { companyId } = scope
    const contact = await tx.contact.findFirst({ where: { companyId, id: contactId, archivedAt: null }, select: { id: true } })
    if (!contact) throw notFound('contact')
    const before = await tx.consent.findFirst({ where: { companyId, contactId, channel } })
    const answer = { granted, source, sinceDay: dateOf(sinceDay) }
    const id = before?.id ?? newId()
    if (!before) await tx.consent.create({ data: { companyId, id, contactId, channel, ...answer } })
    else {
      const { count } = await tx.consent.updateMany({
        where: { companyId, id, version: version ?? -1 },
        data: { ...answer, version: { increment: 1 } },
      })
      await expectChanged(count, 'consent', version ?? 0, { granted, source, sinceDay }, async () => {
        const row = await tx.consent.findFirst({ where: { companyId, id } })
        return row && { version: row.version, granted: row.granted, source: row.source, sinceDay: dayOf(row.sinceDay) }
      })
    }
    await command.audit(granted ? 'given' : 'refused', 'consent', id, { contactId, channel, source, sinceDay })
    await command.announce('contact', contactId)
    await command.enqueue('raise-reminders', {}, companyId)
    return { id, version: before ? before.version + 1 : 1 }
  })
}
