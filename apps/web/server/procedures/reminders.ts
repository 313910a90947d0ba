import 'server-only'
import type { MessageRow } from '@almanac/contract/reminders'
import { readAnswers } from '@almanac/database/read/reminder-answers'
import { readMessages, readReminderCounts, readReminders } from '@almanac/database/read/reminders'
import { makePublicToken } from '@almanac/identity/public-token'
import { mailWorks } from '@almanac/messages/send-mail'
import { textsWork } from '@almanac/messages/send-text'
import { decideReminders } from '@almanac/operations/reminders/decide-reminders'
import { endLink } from '@almanac/operations/reminders/end-link'
import { listTexts, returnToStandard, saveText } from '@almanac/operations/reminders/own-texts'
import { previewReminder } from '@almanac/operations/reminders/preview-reminder'
import { previewText } from '@almanac/operations/reminders/preview-text'
import { LINK_PLACE } from '@almanac/operations/reminders/reminder-text'
import { stepMessages } from '@almanac/operations/reminders/step-messages'
import { now } from '@almanac/runtime/clock'
import { config } from '@almanac/runtime/config'
import { can } from '../procedure.ts'
import { reminderPath } from '../public-paths.ts'

const read = can('read:reminder').reminders

const linkOf = (companyId: string, id: string) => `${config().PUBLIC_URL}${reminderPath(makePublicToken('reminder', { companyId, id }))}`

/** A message as its reader got it: the link itself is made each time and kept nowhere. */
function withLink(row: MessageRow, companyId: string): MessageRow {
  if (row.reminderId === null) return row
  const url = linkOf(companyId, row.reminderId)
  const linkUntil = row.linkUntil !== null && row.linkUntil > now().toISOString() ? row.linkUntil : null
  return { ...row, linkUntil, body: row.body.replaceAll(LINK_PLACE, linkUntil ? url : LINK_PLACE) }
}

export const reminders = {
  list: read.list.handler(({ context, input }) => readReminders(context.scope, input)),
  counts: read.counts.handler(async ({ context }) => ({
    ...(await readReminderCounts(context.scope)),
    mails: mailWorks(),
    texts: textsWork(),
  })),
  messages: read.messages.handler(async ({ context, input }) => {
    const found = await readMessages(context.scope, input)
    return { ...found, rows: found.rows.map((row) => withLink(row, context.scope.companyId)) }
  }),
  answers: read.answers.handler(({ context, input }) => readAnswers(context.scope, input)),
  endLink: can('send:message').reminders.endLink.handler(({ context, input }) => endLink(context.scope, input)),
  preview: read.preview.handler(({ context: { scope }, input: { reminderId } }) =>
    previewReminder(scope, reminderId, linkOf(scope.companyId, reminderId)),
  ),
  texts: read.texts.handler(({ context }) => listTexts(context.scope)),
  previewText: read.previewText.handler(({ context: { scope }, input }) =>
    previewText(scope, input, linkOf(scope.companyId, scope.companyId)),
  ),
  saveText: can('manage:company').reminders.saveText.handler(({ context, input }) => saveText(context.scope, input)),
  standardText: can('manage:company').reminders.standardText.handler(({ context, input }) => returnToStandard(context.scope, input)),
  step: can('send:message').reminders.step.handler(({ context, input }) => stepMessages(context.scope, input)),
  decide: can('decide:reminder').reminders.decide.handler(({ context, input }) => decideReminders(context.scope, input)),
}
