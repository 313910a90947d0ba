import 'server-only'
import { readMessages, readReminderCounts, readReminders } from '@almanac/database/read/reminders'
import { mailWorks } from '@almanac/messages/send-mail'
import { decideReminders } from '@almanac/operations/reminders/decide-reminders'
import { stepMessages } from '@almanac/operations/reminders/step-messages'
import { can } from '../procedure.ts'

const read = can('read:reminder').reminders

export const reminders = {
  list: read.list.handler(({ context, input }) => readReminders(context.scope, input)),
  counts: read.counts.handler(async ({ context }) => ({ ...(await readReminderCounts(context.scope)), mails: mailWorks() })),
  messages: read.messages.handler(({ context, input }) => readMessages(context.scope, input)),
  step: can('send:message').reminders.step.handler(({ context, input }) => stepMessages(context.scope, input)),
  decide: can('decide:reminder').reminders.decide.handler(({ context, input }) => decideReminders(context.scope, input)),
}
