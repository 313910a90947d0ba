import 'server-only'
import { readMessages, readReminderCounts, readReminders } from '@almanac/database/read/reminders'
import { decideReminders } from '@almanac/operations/reminders/decide-reminders'
import { can } from '../procedure.ts'

const read = can('read:reminder').reminders

export const reminders = {
  list: read.list.handler(({ context, input }) => readReminders(context.scope, input)),
  counts: read.counts.handler(({ context }) => readReminderCounts(context.scope)),
  messages: read.messages.handler(({ context, input }) => readMessages(context.scope, input)),
  decide: can('decide:reminder').reminders.decide.handler(({ context, input }) => decideReminders(context.scope, input)),
}
