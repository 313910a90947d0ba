/** What a customer answers by the link in a reminder. `stop`: no more of these by this way. */
export const reminderAnswers = ['days', 'not-now', 'done', 'moved', 'stop'] as const
export type ReminderAnswerKind = (typeof reminderAnswers)[number]

export const reminderAnswerWords: Readonly<Record<ReminderAnswerKind, string>> = {
  days: 'Wants a visit',
  'not-now': 'Not now',
  done: 'Already done',
  moved: 'Has moved',
  stop: 'No more reminders',
}

/** Who replaced the resin, as the customer says. */
export const doneBys = ['you', 'other-company', 'self'] as const
export type DoneBy = (typeof doneBys)[number]

/** As the office reads it. */
export const doneByWords: Readonly<Record<DoneBy, string>> = {
  you: 'by us',
  'other-company': 'by another company',
  self: 'by themselves',
}

/** After how many months a customer may be asked again. */
export const askAgainMonths = [3, 6, 12] as const
