import 'server-only'
import { makePublicToken } from '@almanac/identity/public-token'
import { readReminderLink } from '@almanac/operations/reminders/read-reminder-link'
import { headers } from 'next/headers'
import { admit } from './admit.ts'
import { offerPath, reminderPath } from './public-paths.ts'
import { requestContext } from './request-context.ts'
import type { WireError } from './wire-error.ts'

/** What the customer's page shows, with where its answers go; null for a link that is not known. Reading it changes nothing. */
export async function readLinkedReminder(token: string) {
  const context = requestContext(await headers())
  try {
    return await admit(context, { link: 'reminder', token }, { link: 'reminder', method: 'GET' }, async ({ record }) => {
      const { companyId, id: reminderId } = record
      const reminder = await readReminderLink({ companyId, reminderId })
      const offer = reminder?.offerId ? offerPath(makePublicToken('arrival-windows', { companyId, id: reminder.offerId })) : null
      return reminder && { ...reminder, offer, sendTo: `/api${reminderPath(token)}` }
    })
  } catch (error) {
    if ((error as WireError).data?.code === 'not-found') return null
    throw error
  }
}
