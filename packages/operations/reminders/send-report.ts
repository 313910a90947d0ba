import { createHash } from 'node:crypto'
import type { SendReport } from '@almanac/contract/reports'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { ReportFacts } from '@almanac/documents/service-report/report-facts'
import { fileStore } from '@almanac/files/file-store'
import { mailWorks } from '@almanac/messages/send-mail'
import type { ReportRefusal } from '@almanac/records/report-mail'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { formatDay } from '@almanac/units/format-day'
import { wordsIn } from '@almanac/words/words-in'
import { renderReport } from './render-report.ts'
import { type Reader, readersIn, readReportReaders } from './report-readers.ts'
import { stepMessage } from './step-message.ts'

const refuse = (why: ReportRefusal, email: string | null) =>
  new AppError('conflict', (locale) => wordsIn(locale, 'sendReport')(`why/${why}`, { email: email ?? '' }))

/** Who is written to; not found where they are no contact of whoever held the site that day. */
function readerOf(readers: readonly Reader[], contactId: string): Reader {
  const found = readers.find((one) => one.contactId === contactId)
  if (!found) throw notFound('contact')
  return found
}

/** What the mail says, in its reader's language: what was done in a sentence, and whom to call. */
function mailOf({ display, kind, site, day, outcome, head }: ReportFacts, name: string | null) {
  const words = wordsIn(display.locale, 'report')
  const said = { kind: wordsIn(display.locale, 'jobKind')(kind), site: site.label, day: formatDay(day, display) }
  const paragraphs = [
    name ? words('mail/dear', { name }) : words('mail/hello'),
    words('mail/attached', said),
    words(`outcome/${outcome}`),
    ...(head.telephone ? [words('mail/call', { phone: head.telephone })] : []),
    head.firmName,
  ]
  return { subject: words('mail/subject', said), body: paragraphs.join('\n\n'), fileName: words('mail/file', { day }) }
}

/** Writes the mail down as approved, with its file in the store. */
async function writeMessage(tx: Tx, command: Command, { visitId }: SendReport, to: Reader, made: { facts: ReportFacts; pdf: Uint8Array }) {
  const { companyId, at } = command
  const { facts, pdf } = made
  const message = { id: newId(), state: 'drafted' }
  const file = { fileState: 'stored', fileBytes: pdf.byteLength, fileSha256: createHash('sha256').update(pdf).digest('hex') }
  await fileStore().put({ companyId, id: message.id }, pdf)
  try {
    await tx.message.create({
      data: {
        ...{ companyId, ...message, contactId: to.contactId, visitId, channel: 'email', address: to.email ?? '', createdAt: at },
        ...mailOf(facts, to.name),
        ...file,
      },
    })
    await stepMessage(tx, command, message, 'approve')
  } catch (error) {
    await fileStore().remove({ companyId, id: message.id })
    throw error
  }
  return message.id
}

/** The report, drawn before anything is locked; null where it can't go as things are: why is said where nothing changes any more. */
async function drawnAhead(scope: Scope, { visitId, contactId }: SendReport) {
  try {
    const reader = readerOf((await readReportReaders(scope, visitId)).readers, contactId)
    return reader.refusal ? null : await renderReport(scope, visitId, reader.language)
  } catch (error) {
    if (error instanceof AppError && (error.code === 'not-found' || error.code === 'conflict')) return null
    throw error
  }
}

/**
 * Mails the service report of a closed visit to a contact of whoever held the site that day, as a PDF in their language: it goes by the messages' own states, so that it is
 * sent once, and is kept with what it said. Refused, with the reason, where no mail server is set up, the contact has no address that takes mail or doesn't agree, or
 * has the report already.
 */
export async function sendReport(scope: Scope & { personId: string }, input: SendReport): Promise<{ messageId: string }> {
  const { visitId, contactId } = input
  const made = await drawnAhead(scope, input)
  return runCommand(scope, 'reminders.send-report', input, async (tx, command) => {
    const { companyId } = scope
    // Two who send at once stand in line, so that the second sees what the first did.
    await lockRows(tx, companyId, 'visit', [visitId])
    const to = readerOf((await readersIn(tx, companyId, visitId)).readers, contactId)
    if (!mailWorks()) throw refuse('no-mail', null)
    if (to.refusal) throw refuse(to.refusal, to.email)
    const messageId = await writeMessage(tx, command, input, to, made ?? (await renderReport(scope, visitId, to.language)))
    await command.audit('report approved', 'visit', visitId, { messageId })
    await command.announce('reminders', companyId)
    await command.enqueue('send-messages', {}, companyId)
    return { messageId }
  })
}
