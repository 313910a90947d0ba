import 'server-only'
import { mailWorks } from '@almanac/messages/send-mail'
import { readReportReaders } from '@almanac/operations/reminders/report-readers'
import { sendReport } from '@almanac/operations/reminders/send-report'
import { can } from '../procedure.ts'

const close = can('close:visit').reports

export const reports = {
  readers: close.readers.handler(async ({ context, input }) => {
    const found = await readReportReaders(context.scope, input.visitId)
    if (mailWorks()) return found
    // What went already is said all the same.
    return {
      ...found,
      readers: found.readers.map((one) => ({ ...one, refusal: one.refusal === 'sent' ? one.refusal : ('no-mail' as const) })),
    }
  }),
  send: close.send.handler(({ context, input }) => sendReport(context.scope, input)),
}
