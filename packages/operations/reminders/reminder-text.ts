import { type Filled, fillOwnText, type OwnValues } from '@almanac/messages/own-text'
import type { Channel } from '@almanac/records/channel'
import { plainMarks } from '@almanac/service-rules/messages/text-length'
import type { Life, Reason } from '@almanac/service-rules/reminders/reason'
import type { AmountDisplay } from '@almanac/units/display'
import { formatTankSize, formatVolumeFt3 } from '@almanac/units/format'
import { type DayDisplay, formatLongMonth } from '@almanac/units/format-day'
import type { Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'
import type { ReminderName } from './reminder-names.ts'
import type { OwnText } from './standard-text.ts'

export type ReminderFacts = {
  companyName: string
  telephone: string | null
  contactName: string | null
  siteLabel: string
  /** The early end of the due window: what is to be done is done before it. */
  dueEarliest: string | null
  reason: Reason | null
  life: Life | null
  volumeFt3: number | null
  tank: { diameterIn: number; heightIn: number } | null
  /** Which notice of its window it is, from 1. */
  notice: number
}

/** Where the answer link stands in a message as it is kept: the link itself is a key, and is made only when the message goes out. */
export const LINK_PLACE = '[answer link]'

type Letter = Words<'letter'>

function reasonSentence(words: Letter, reason: Reason): string {
  if (reason.key === 'iron') return words('iron')
  if (reason.key === 'free-chlorine') return words('chlorine')
  return reason.sinceYear === null ? words('chloramine') : words('chloramineSince', { year: String(reason.sinceYear) })
}

const lifeSentence = (words: Letter, { lived, likely }: Life) =>
  likely === null ? words('outlived', { lived }) : words('lived', { lived: String(lived), likely })

/** The month before which it should be done; null where that is past or not known. */
const monthOf = ({ dueEarliest }: ReminderFacts, today: string, display: DayDisplay) =>
  dueEarliest !== null && dueEarliest > today ? formatLongMonth(dueEarliest, display) : null

type Sentences = Record<'reason' | 'age' | 'advice', string | null>

function sentencesOf(facts: ReminderFacts, today: string, display: DayDisplay): Sentences {
  const words = wordsIn(display.locale, 'letter')
  const month = monthOf(facts, today, display)
  return {
    reason: facts.reason ? reasonSentence(words, facts.reason) : null,
    age: facts.life ? lifeSentence(words, facts.life) : null,
    advice: month ? words('dueBefore', { month }) : words('dueNow'),
  }
}

const joined = ({ reason, age, advice }: Sentences) => [reason, age, advice].filter((one) => one !== null).join(' ')

/** Why and until when, in whole sentences. */
export const whyAndWhen = (facts: ReminderFacts, today: string, display: DayDisplay): string => joined(sentencesOf(facts, today, display))

/** What each name is filled in with, as the reader writes days and the company measures. */
function valuesOf(facts: ReminderFacts, today: string, display: AmountDisplay): OwnValues {
  const sentences = sentencesOf(facts, today, display)
  const values: Record<ReminderName, string | number | null> = {
    ...{ name: facts.contactName, site: facts.siteLabel, company: facts.companyName, phone: facts.telephone },
    ...{ ...sentences, why: joined(sentences), month: monthOf(facts, today, display), notice: facts.notice, answer_link: LINK_PLACE },
    resin_volume: facts.volumeFt3 === null ? null : formatVolumeFt3(facts.volumeFt3, display),
    tank_size: facts.tank && formatTankSize(facts.tank.diameterIn, facts.tank.heightIn, display),
  }
  return values
}

const bodyOf = (filled: string, channel: Channel) => {
  const body = filled.replace(/\n{3,}/g, '\n\n').trim()
  return channel === 'text' ? plainMarks(body) : body
}

/** What a contact is told by a text with names, in the display's locale and units; or a sentence why it can't be filled in. */
export function reminderText(
  text: OwnText,
  facts: ReminderFacts,
  channel: Channel,
  today: string,
  display: AmountDisplay,
): { ok: true; subject: string; body: string } | (Filled & { ok: false }) {
  const values = valuesOf(facts, today, display)
  const subject = fillOwnText(text.subject, values)
  if (!subject.ok) return subject
  const body = fillOwnText(text.body, values)
  return body.ok ? { ok: true, subject: subject.text.trim(), body: bodyOf(body.text, channel) } : body
}
