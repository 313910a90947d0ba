import { type DayDisplay, formatLongMonth } from '@almanac/units/format-day'
import { wordsIn } from '@almanac/words/words-in'

export type ReminderFacts = {
  companyName: string
  telephone: string | null
  contactName: string | null
  siteLabel: string
  dueEarliest: string | null
  dueLatest: string | null
}

function dueSentence({ siteLabel: site, dueEarliest, dueLatest }: ReminderFacts, today: string, display: DayDisplay): string {
  const words = wordsIn(display.locale, 'letter')
  const from = dueEarliest && dueEarliest > today ? formatLongMonth(dueEarliest, display) : null
  const until = dueLatest && dueLatest > today ? formatLongMonth(dueLatest, display) : null
  if (from && until && from !== until) return words('dueBetween', { site, from, until })
  return until ? words('dueBefore', { site, until }) : words('dueSoon', { site })
}

/** What the customer reads, in the language of the display's locale: what is due and why, when, and how to answer. Nothing is promised and nothing is pressed. */
export function reminderText(facts: ReminderFacts, today: string, display: DayDisplay): { subject: string; body: string } {
  const words = wordsIn(display.locale, 'letter')
  const { contactName: name, telephone: phone, siteLabel: site, companyName } = facts
  return {
    subject: words('subject', { site }),
    body: [
      name ? words('dear', { name }) : words('hello'),
      dueSentence(facts, today, display),
      words('forecast'),
      phone ? words('answer', { phone }) : words('answerUs'),
      companyName,
    ].join('\n\n'),
  }
}
