import type { ReminderPreview } from '@almanac/contract/reminders'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { now } from '@almanac/runtime/clock'
import { notFound } from '@almanac/runtime/errors'
import { textLength } from '@almanac/service-rules/messages/text-length'
import { composeReminder } from './compose-reminder.ts'
import { LINK_PLACE } from './reminder-text.ts'

/** What a reminder would say if it were approved now; nothing is written. `link` is as long as the one that it would go out with. */
export async function previewReminder(scope: Pick<Scope, 'companyId'>, reminderId: string, link: string): Promise<ReminderPreview> {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const found = await tx.reminder.findUnique({ where: { companyId_id: { companyId, id: reminderId } }, select: { id: true } })
    if (!found) throw notFound('reminder')
    const composed = await composeReminder(tx, companyId, reminderId, now())
    if (typeof composed === 'string') return { address: null, subject: null, body: null, refused: composed, text: null }
    const { address, subject, body, channel } = composed
    const text = channel === 'text' ? textLength(body.replaceAll(LINK_PLACE, link)) : null
    return { address, subject, body, refused: null, text }
  })
}
