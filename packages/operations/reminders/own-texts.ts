import type { ReminderText, SaveTextInput, StandardTextInput } from '@almanac/contract/own-texts'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { readOwnTexts } from '@almanac/database/read/own-texts'
import { type Command, runCommand } from '@almanac/database/run-command'
import { checkOwnText } from '@almanac/messages/own-text'
import { type Channel, channels } from '@almanac/records/channel'
import { type Language, languages, localeFor } from '@almanac/records/language'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { hasLink, namesFor, reminderNames } from './reminder-names.ts'
import { type OwnText, standardText } from './standard-text.ts'

type Which = { channel: Channel; language: Language }

/** Each text of the reminders, by channel and language: the company's own where it has one, and the standard. */
export async function listTexts(scope: Pick<Scope, 'companyId'>): Promise<{ texts: ReminderText[] }> {
  const { locale, texts } = await readOwnTexts(scope)
  const all = channels.flatMap((channel) => languages.map((language) => ({ channel, language })))
  return {
    texts: all.map(({ channel, language }) => {
      const found = texts.find((one) => one.channel === channel && one.language === language)
      return {
        ...{ channel, language, version: found?.version ?? 0, own: found?.own ?? null },
        standard: standardText(channel, localeFor(language, locale)),
        names: namesFor(channel).map((name) => ({ name, is: reminderNames[name] })),
      }
    }),
  }
}

/** What is wrong with a text and where; null where nothing is. */
export function wrongWith({ subject, body }: OwnText, channel: Channel): { field: 'subject' | 'body'; sentence: string } | null {
  const known = namesFor(channel)
  const of = (field: 'subject' | 'body', sentence: string | null) => (sentence === null ? null : { field, sentence })
  if (channel !== 'text' && subject.trim() === '') return of('subject', 'Enter a subject.')
  if (body.trim() === '') return of('body', 'Enter a text.')
  return of('subject', checkOwnText(subject, known)) ?? of('body', checkOwnText(body, known, hasLink(channel) ? 'answer_link' : undefined))
}

async function write(tx: Tx, command: Command, { channel, language }: Which, version: number, text: OwnText | null) {
  const { companyId, at } = command
  const where = { companyId, channel, language }
  const data = { subject: text?.subject ?? null, body: text?.body ?? null, changedAt: at }
  // A text that was never written has no row; of two who write it at once the second finds the first's.
  if (version === 0) await tx.ownText.createMany({ data: [{ ...where, id: newId(), changedAt: at }], skipDuplicates: true })
  const { count } = await tx.ownText.updateMany({
    where: { ...where, version: Math.max(1, version) },
    data: { ...data, version: { increment: 1 } },
  })
  const row = await tx.ownText.findFirst({ where, select: { id: true, version: true } })
  if (!row) throw notFound('reminder text')
  await expectChanged(count, 'reminder text', version, {}, async () => row)
  await command.audit(text ? 'changed' : 'standard', 'own-text', row.id, { channel, language })
  await command.announce('reminders', companyId)
  return { version: row.version }
}

/** Keeps a company's own text. Refuses one that can't be filled in, or that gives a customer no way to answer and to stop. */
export async function saveText(scope: Scope & { personId: string }, input: SaveTextInput): Promise<{ version: number }> {
  const { channel, language, version, subject, body } = input
  const wrong = wrongWith(input, channel)
  if (wrong) throw new AppError('invalid', `${wrong.sentence} Nothing was saved.`, { field: wrong.field })
  return runCommand(scope, 'reminders.save-text', input, (tx, command) =>
    write(tx, command, { channel, language }, version, { subject: subject.replace(/\s+/g, ' ').trim(), body: body.trim() }),
  )
}

/** Goes back to the standard text. */
export async function returnToStandard(scope: Scope & { personId: string }, input: StandardTextInput): Promise<{ version: number }> {
  const { channel, language, version } = input
  return runCommand(scope, 'reminders.standard-text', input, (tx, command) => write(tx, command, { channel, language }, version, null))
}
