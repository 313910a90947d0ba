/** The states of a reminder. */
export const reminderStates = ['waiting', 'held', 'released', 'dropped'] as const
export type ReminderState = (typeof reminderStates)[number]

/** The states of a message; `uncertain`: nobody knows whether it was sent. */
export const messageStates = ['outbox', 'sending', 'sent', 'uncertain', 'withdrawn'] as const
export type MessageState = (typeof messageStates)[number]
