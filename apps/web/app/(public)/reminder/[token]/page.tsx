import { oneOf } from '@almanac/records/choices'
import { languages, localeFor } from '@almanac/records/language'
import { wordsIn } from '@almanac/words/words-in'
import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { AnswerReminder } from '@/features/reminder-link/answer-reminder'
import { readLinkedReminder } from '@/server/reminder-link'

export const dynamic = 'force-dynamic'

type Props = { params: Promise<{ token: string }>; searchParams: Promise<{ said?: string; l?: string }> }

export async function generateMetadata(props: Props): Promise<Metadata> {
  const found = await readReminder(props)
  return { title: found ? wordsIn(found.locale, 'reminderLink')('title') : undefined, robots: { index: false }, referrer: 'no-referrer' }
}

/** The reminder in the language that its reader chose on the page, or else in that of the contact. */
async function readReminder({ params, searchParams }: Props) {
  const found = await readLinkedReminder((await params).token)
  return found && { ...found, locale: localeFor(oneOf(languages, (await searchParams).l), found.locale) }
}

export default async function ReminderPage(props: Props) {
  const found = await readReminder(props)
  if (!found) notFound()
  const { why, ...reminder } = found
  return <AnswerReminder reminder={{ ...reminder, why: why(found.locale) }} said={(await props.searchParams).said} />
}
