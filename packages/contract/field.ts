import { setAsideKinds } from '@almanac/records/set-aside-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant, page, pageOf, Version } from './shared.ts'

/** A place in a tablet's queue. */
const Place = z.number().int().min(1).max(2_147_483_647)

/**
 * One command as a tablet keeps it: docs/field-protocol.md. The body is read by kind and form behind the door, so that one that can't be read is kept with all its
 * content and not refused.
 */
export const FieldCommand = command({
  queueId: Id,
  sequence: Place,
  /** The lowest number that the tablet still holds. */
  oldest: Place,
  form: z.number().int().min(1).max(1000),
  kind: z.string().min(1).max(40),
  madeAt: Instant,
  sentAt: Instant,
  body: z.record(z.string(), z.unknown()),
})
export type FieldCommand = z.infer<typeof FieldCommand>

export const FieldAnswer = z.discriminatedUnion('result', [
  z.object({ result: z.literal('taken') }),
  z.object({ result: z.literal('set-aside'), reason: z.string() }),
  z.object({ result: z.literal('send-first'), expects: Place }),
])
export type FieldAnswer = z.infer<typeof FieldAnswer>

/** What a tablet sent and the office has to look at. */
export const SetAsideRow = z.object({
  id: Id,
  version: Version,
  kind: z.enum(setAsideKinds),
  command: z.string(),
  personName: z.string().nullable(),
  visitId: Id.nullable(),
  jobId: Id.nullable(),
  siteLabel: z.string().nullable(),
  reason: z.string(),
  /** All that it holds, in words. */
  lines: z.array(z.object({ name: z.string(), text: z.string() })),
  madeAt: Instant,
  clockAheadMinutes: z.number().int(),
  receivedAt: Instant,
})
export type SetAsideRow = z.infer<typeof SetAsideRow>

export const SettleSetAside = command({ asideId: Id, version: Version })
export type SettleSetAside = z.infer<typeof SettleSetAside>

export const field = {
  send: oc.route({ method: 'POST', path: '/field/send' }).input(FieldCommand).output(FieldAnswer),
  setAside: oc.route({ method: 'GET', path: '/field/set-aside' }).input(page({})).output(pageOf(SetAsideRow)),
  settle: oc
    .route({ method: 'POST', path: '/field/settle' })
    .input(SettleSetAside)
    .output(z.object({ id: Id, version: Version })),
}
