import { type DayDisplay, formatLongMonth } from '@almanac/units/format-day'

export type ReminderFacts = {
  companyName: string
  contactName: string | null
  siteLabel: string
  dueEarliest: string | null
  dueLatest: string | null
}

function windowWords({ dueEarliest, dueLatest }: ReminderFacts, today: string, display: DayDisplay): string {
  const from = dueEarliest && dueEarliest > today ? formatLongMonth(dueEarliest, display) : null
  const until = dueLatest && dueLatest > today ? formatLongMonth(dueLatest, display) : null
  if (from && until && from !== until) return `between ${from} and ${until}`
  if (until) return `before ${until}`
  return 'soon'
}

/** What the customer reads: what is due and why, when, and how to answer. Nothing is promised and nothing is pressed. */
export function reminderText(facts: ReminderFacts, today: string, display: DayDisplay): { subject: string; body: string } {
  const greeting = facts.contactName ? `Dear ${facts.contactName},` : 'Hello,'
  return {
    subject: `The resin of your water softener at ${facts.siteLabel}`,
    body: [
      greeting,
      `the resin in your water softener at ${facts.siteLabel} is getting old. By our records it should be replaced ${windowWords(facts, today, display)}. Resin that has worn out lets hard water through and can break up.`,
      'This is a forecast from its age and your water, not a measurement. If something has changed, or the softener was worked on by others, please tell us.',
      'Answer this message or ring us to choose a day. If you would rather not hear from us about this, say so and we will stop.',
      facts.companyName,
    ].join('\n\n'),
  }
}
