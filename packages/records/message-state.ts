/** The states of a reminder. */
export const reminderStates = ['waiting', 'held', 'released', 'dropped'] as const
export type ReminderState = (typeof reminderStates)[number]

/**
 * The states of a message to a customer. What may follow what is a rule: service-rules/messages/message-states. `uncertain`: nobody knows whether it was
 * sent; `refused`: the other side took it not; `bounced`: it was sent and came back.
 */
export const messageStates = ['drafted', 'approved', 'held', 'sending', 'sent', 'bounced', 'refused', 'uncertain', 'withdrawn'] as const
export type MessageState = (typeof messageStates)[number]

/** What a person may do to a message from its list; what follows is a rule: service-rules/messages/message-states. */
export const deskEvents = ['hold', 'free', 'withdraw', 'mark-sent', 'send-again', 'bounce'] as const
export type DeskEvent = (typeof deskEvents)[number]

/** The messages of one list: what is still to go out, what somebody must look at, and what is over. */
export const messageLists = {
  outbox: ['drafted', 'approved', 'held', 'sending'],
  check: ['uncertain', 'refused', 'bounced'],
  sent: ['sent', 'withdrawn'],
} as const satisfies Record<string, readonly MessageState[]>
export type MessageList = keyof typeof messageLists

export const messageStateWords: Readonly<Record<MessageState, string>> = {
  drafted: 'draft',
  approved: 'ready to send',
  held: 'on hold',
  sending: 'sending',
  sent: 'sent',
  bounced: 'came back',
  refused: 'refused',
  uncertain: 'not known whether sent',
  withdrawn: 'withdrawn',
}

/** The file that went with a message: kept, to be taken away since somebody was erased, or taken away. */
export const mailedFileStates = ['stored', 'erased', 'gone'] as const
