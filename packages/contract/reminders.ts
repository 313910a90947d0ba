import { channels } from '@almanac/records/channel'
import { deskEvents, type MessageList, messageLists, messageStates, reminderStates } from '@almanac/records/message-state'
import { doneBys, reminderAnswers } from '@almanac/records/reminder-answer'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { ownTexts, TextLength } from './own-texts.ts'
import { command, Day, Id, Instant, page, pageOf, Version } from './shared.ts'

export const ReminderRow = z.object({
  id: Id,
  version: Version,
  state: z.enum(reminderStates),
  stateReason: z.string().nullable(),
  siteId: Id,
  siteLabel: z.string(),
  town: z.string().nullable(),
  bedId: Id,
  contactName: z.string().nullable(),
  channel: z.enum(channels),
  address: z.string().nullable(),
  dueEarliest: Day.nullable(),
  dueLatest: Day.nullable(),
  createdAt: Instant,
})
export type ReminderRow = z.infer<typeof ReminderRow>

export const MessageRow = z.object({
  id: Id,
  version: Version,
  state: z.enum(messageStates),
  stateReason: z.string().nullable(),
  /** When a server is asked again, and when it was sent or was over otherwise. */
  tryAfter: Instant.nullable(),
  settledAt: Instant.nullable(),
  channel: z.enum(channels),
  address: z.string(),
  subject: z.string(),
  body: z.string(),
  siteId: Id.nullable(),
  siteLabel: z.string().nullable(),
  createdAt: Instant,
  reminderId: Id.nullable(),
  /** Whether a PDF goes or went with it, and is kept. */
  hasFile: z.boolean(),
  /** Until when its link works; null where it has none that does. */
  linkUntil: Instant.nullable(),
})
export type MessageRow = z.infer<typeof MessageRow>

/** What a customer answered by the link. */
const AnswerRow = z.object({
  id: Id,
  kind: z.enum(reminderAnswers),
  days: z.string().nullable(),
  askAfter: Day.nullable(),
  doneDay: Day.nullable(),
  doneBy: z.enum(doneBys).nullable(),
  siteId: Id,
  siteLabel: z.string(),
  contactName: z.string().nullable(),
  createdAt: Instant,
})
export type AnswerRow = z.infer<typeof AnswerRow>

export const EndLinkInput = command({ reminderId: Id })
export type EndLinkInput = z.infer<typeof EndLinkInput>

/** What a reminder would say if it were approved now; `refused` says why it would say nothing. */
const ReminderPreview = z.object({
  address: z.string().nullable(),
  subject: z.string().nullable(),
  body: z.string().nullable(),
  refused: z.string().nullable(),
  /** How long a text is, with its link whole; null for what is no text. `wide`: a letter that makes each text shorter. */
  text: TextLength.nullable(),
})
export type ReminderPreview = z.infer<typeof ReminderPreview>

export const DecideInput = command({
  reminders: z
    .array(z.object({ id: Id, version: Version }))
    .min(1)
    .max(200),
  decision: z.enum(['release', 'hold', 'unhold']),
})
export type DecideInput = z.infer<typeof DecideInput>

export const StepInput = command({
  messages: z
    .array(z.object({ id: Id, version: Version }))
    .min(1)
    .max(200),
  event: z.enum(deskEvents),
})
export type StepInput = z.infer<typeof StepInput>

/** For each: done, or why not. */
export const Decided = z.object({ results: z.array(z.object({ id: Id, done: z.boolean(), reason: z.string().nullable() })) })
export type Decided = z.infer<typeof Decided>

export const reminders = {
  ...ownTexts,
  list: oc
    .route({ method: 'GET', path: '/reminders/list' })
    .input(page({ state: z.enum(reminderStates).default('waiting') }))
    .output(pageOf(ReminderRow)),
  counts: oc.route({ method: 'GET', path: '/reminders/counts' }).output(
    z.object({
      waiting: z.number().int(),
      held: z.number().int(),
      released: z.number().int(),
      dropped: z.number().int(),
      /** Messages still to go out, to be looked at, and over. */
      outbox: z.number().int(),
      check: z.number().int(),
      sent: z.number().int(),
      answers: z.number().int(),
      /** Approved letters, to be printed. */
      letters: z.number().int(),
      leadDays: z.number().int(),
      /** Whether mails and texts go out by themselves here. */
      mails: z.boolean(),
      texts: z.boolean(),
      /** When they do, at the customer's clock. */
      sendFrom: z.string(),
      sendUntil: z.string(),
    }),
  ),
  messages: oc
    .route({ method: 'GET', path: '/reminders/messages' })
    .input(page({ list: z.enum(Object.keys(messageLists) as [MessageList, ...MessageList[]]).default('outbox') }))
    .output(pageOf(MessageRow)),
  answers: oc.route({ method: 'GET', path: '/reminders/answers' }).input(page({})).output(pageOf(AnswerRow)),
  endLink: oc
    .route({ method: 'POST', path: '/reminders/end-link' })
    .input(EndLinkInput)
    .output(z.object({ ended: z.boolean() })),
  preview: oc
    .route({ method: 'GET', path: '/reminders/preview/{reminderId}' })
    .input(z.object({ reminderId: Id }))
    .output(ReminderPreview),
  step: oc.route({ method: 'POST', path: '/reminders/step' }).input(StepInput).output(Decided),
  decide: oc.route({ method: 'POST', path: '/reminders/decide' }).input(DecideInput).output(Decided),
}
