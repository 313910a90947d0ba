import type { Channel } from '@almanac/records/channel'
import type { Life, Reason } from '@almanac/service-rules/reminders/reason'
import { type DayDisplay, formatLongMonth } from '@almanac/units/format-day'
import type { Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'

export type ReminderFacts = {
  companyName: string
  telephone: string | null
  contactName: string | null
  siteLabel: string
  /** The early end of the due window: what is to be done is done before it. */
  dueEarliest: string | null
  reason: Reason | null
  life: Life | null
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

/** Why and until when, in whole sentences. */
export function whyAndWhen(facts: ReminderFacts, today: string, display: DayDisplay): string {
  const words = wordsIn(display.locale, 'letter')
  const month = monthOf(facts, today, display)
  return [
    facts.reason ? reasonSentence(words, facts.reason) : null,
    facts.life ? lifeSentence(words, facts.life) : null,
    month ? words('dueBefore', { month }) : words('dueNow'),
  ]
    .filter((one) => one !== null)
    .join(' ')
}

/**
 * What a contact is told, in the language of the display's locale: by mail and letter why, when and how to answer; as a text the least of it; for the telephone
 * what whoever calls says. Nothing is promised and nothing is pressed.
 */
export function reminderText(
  facts: ReminderFacts,
  channel: Channel,
  today: string,
  display: DayDisplay,
): { subject: string; body: string } {
  const words = wordsIn(display.locale, 'letter')
  const { contactName: name, telephone: phone, siteLabel: site, companyName: company } = facts
  if (channel === 'phone')
    return {
      subject: name ? words('callAbout', { name, site }) : words('callSomebodyAbout', { site }),
      body: [words('old', { site }), whyAndWhen(facts, today, display)].join('\n\n'),
    }
  if (channel === 'text') {
    const month = monthOf(facts, today, display)
    const short = month ? words('shortBefore', { company, site, month }) : words('shortNow', { company, site })
    return {
      subject: words('subject', { site }),
      body: [short, phone ? words('shortCall', { phone }) : '', words('shortLink', { link: LINK_PLACE })].filter(Boolean).join(' '),
    }
  }
  return {
    subject: words('subject', { site }),
    body: [
      name ? words('dear', { name }) : words('hello'),
      words('old', { site }),
      whyAndWhen(facts, today, display),
      words('forecast'),
      channel === 'email' ? words('answerHere', { link: LINK_PLACE }) : null,
      phone ? words('answer', { phone }) : words('answerUs'),
      company,
    ]
      .filter((one) => one !== null)
      .join('\n\n'),
  }
}
