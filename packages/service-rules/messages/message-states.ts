import { type MessageState, messageStates } from '@almanac/records/message-state'

/**
 * What can happen to a message. `approve`, `hold`, `free`, `withdraw`, `mark-sent` and `send-again` are a person's; `begin` is the worker's, written down before
 * it talks to a server; `take`, `put-off`, `refuse` and `lose` are what came of the talk (`lose`: nobody knows); `bounce` is a report that it came back.
 */
export const messageEvents = [
  ...(['approve', 'hold', 'free', 'withdraw', 'mark-sent', 'send-again'] as const),
  ...(['begin', 'take', 'put-off', 'refuse', 'lose', 'bounce'] as const),
]
export type MessageEvent = (typeof messageEvents)[number]

export type MessageStep = { ok: true; state: MessageState } | { ok: false; reason: string }

const to = (state: MessageState): MessageStep => ({ ok: true, state })
const no = (reason: string): MessageStep => ({ ok: false, reason })

const notApproved = 'This message isn’t approved yet. Approve it first.'
const onHold = 'This message is on hold. Take it off hold first.'
const notHeld = 'This message isn’t on hold.'
const going = 'This message is being sent right now. Wait a minute, then look again.'
const notGoing = 'This message isn’t being sent right now.'
const sent = 'This message was sent and can’t be called back.'
const back = 'This message was sent and came back. Check the address, and tell the customer another way.'
const refused = 'The other side refused this message. Check the address, then send it again.'
const unsure = 'Nobody knows whether this message was sent. Find out first, then mark it as sent or send it again.'
const gone = 'This message was withdrawn and stays so.'
const approved = 'This message is already approved.'
const notSent = 'This message wasn’t sent, so it can’t have come back.'
const nothingWrong = 'Nothing went wrong with this message, so there is nothing to send again.'

const all = (step: MessageStep) => Object.fromEntries(messageEvents.map((event) => [event, step])) as Record<MessageEvent, MessageStep>
/** Sent, come back or withdrawn: nothing leads on but what is named. */
const over = (reason: string, more: Partial<Record<MessageEvent, MessageStep>> = {}) => ({ ...all(no(reason)), ...more })

const messageStateTable: Record<MessageState, Record<MessageEvent, MessageStep>> = {
  drafted: {
    ...{ approve: to('approved'), hold: to('held'), free: no(notHeld), withdraw: to('withdrawn') },
    ...{ 'mark-sent': no(notApproved), 'send-again': no(notApproved), begin: no(notApproved) },
    ...{ take: no(notGoing), 'put-off': no(notGoing), refuse: no(notGoing), lose: no(notGoing), bounce: no(notSent) },
  },
  approved: {
    ...{ approve: no(approved), hold: to('held'), free: no(notHeld), withdraw: to('withdrawn') },
    ...{ 'mark-sent': to('sent'), 'send-again': no(nothingWrong), begin: to('sending') },
    ...{ take: no(notGoing), 'put-off': no(notGoing), refuse: no(notGoing), lose: no(notGoing), bounce: no(notSent) },
  },
  held: {
    ...{ approve: no(onHold), hold: no('This message is already on hold.'), free: to('approved'), withdraw: to('withdrawn') },
    ...{ 'mark-sent': no(onHold), 'send-again': no(onHold), begin: no(onHold) },
    ...{ take: no(onHold), 'put-off': no(onHold), refuse: no(onHold), lose: no(onHold), bounce: no(notSent) },
  },
  sending: {
    ...all(no(going)),
    ...{ take: to('sent'), 'put-off': to('approved'), refuse: to('refused'), lose: to('uncertain') },
  },
  sent: over(sent, { bounce: to('bounced') }),
  bounced: over(back),
  refused: over(refused, { 'send-again': to('approved') }),
  // Whoever sent it may still come back and say so; and a report that it came back says that it had gone.
  uncertain: over(unsure, { 'mark-sent': to('sent'), 'send-again': to('approved'), take: to('sent'), bounce: to('bounced') }),
  withdrawn: over(gone),
}

/** The state after an event, or a sentence saying why it cannot happen now. */
export const nextMessageState = (state: MessageState, event: MessageEvent): MessageStep => messageStateTable[state][event]

/** The states from which an event leads on. */
export const statesBefore = (event: MessageEvent): MessageState[] => messageStates.filter((state) => nextMessageState(state, event).ok)
