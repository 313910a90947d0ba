import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { bounceWords, isDeadAddress } from '@almanac/service-rules/messages/bounce-status'
import { oweCall } from '../shared/call-backs.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { markDeadEmail } from './dead-email.ts'
import { stepMessage } from './step-message.ts'

/**
 * Writes down that a mail came back: the message says so and why, somebody is to call its reader, and an address that takes no mail is marked, so that nothing is
 * sent there until it is corrected. Read twice, a report changes nothing more. False where the message is not one that could have come back.
 */
export async function takeBounce(
  { companyId, messageId }: { companyId: string; messageId: string },
  status: string | null,
): Promise<boolean> {
  return inCompany({ companyId }, async (tx) => {
    const command = commandTools(tx, { companyId, personId: null }, 'reminders.bounce', null)
    await lockRows(tx, companyId, 'message', [messageId])
    const message = await tx.message.findUnique({
      where: { companyId_id: { companyId, id: messageId } },
      include: {
        reminder: { select: { siteId: true } },
        visit: { select: { job: { select: { siteId: true } } } },
        contact: { select: { siteId: true } },
      },
    })
    if (!message) return false
    const { contact, reminder, visit, state } = message
    const reason = bounceWords(status)
    const refused = await stepMessage(tx, command, { id: messageId, state }, 'bounce', { stateReason: reason })
    if (refused !== null) return state === 'bounced'
    if (isDeadAddress(status)) await markDeadEmail(tx, command, message)
    const { today } = await companyFacts(tx, companyId)
    const note = `A ${visit ? 'service report' : 'reminder'} by email came back. ${reason} Ask for a working address, and tell them by phone.`
    await oweCall(tx, command, { cause: 'asked', dueDay: today, siteId: reminder?.siteId ?? visit?.job.siteId ?? contact.siteId, note })
    await command.announce('reminders', companyId)
    return true
  })
}
