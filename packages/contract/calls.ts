import { callBackCauses, callBackOutcomes, callComplaints, calledForVisits, callFollowUps } from '@almanac/records/call'
import { questionKeys } from '@almanac/records/forecast-question'
import { jobKinds } from '@almanac/records/job-kind'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Id, Instant, page, pageOf, Version } from './shared.ts'
import { line, WhomToCall } from './site-facts.ts'

/** One call as lists show it. Name and phone only where the caller is on no record. */
const CallRow = z.object({
  id: Id,
  at: Instant,
  takenBy: z.string(),
  siteId: Id.nullable(),
  siteLabel: z.string().nullable(),
  town: z.string().nullable(),
  customerName: z.string().nullable(),
  callerName: z.string().nullable(),
  callerPhone: z.string().nullable(),
  sees: z.enum(callComplaints).nullable(),
  words: z.string().nullable(),
  advised: z.string().nullable(),
  stillSoft: z.boolean(),
  hardSinceDay: Day.nullable(),
  /** The last day on which it may have begun; null where the first alone was told. */
  hardSinceLatest: Day.nullable(),
  follows: z.enum(callFollowUps),
  job: z.object({ id: Id, kind: z.enum(jobKinds) }).nullable(),
})
export type CallRow = z.infer<typeof CallRow>

/** Somebody to be called. `whom` is who holds the site; `callerName` and `callerPhone` are of a caller on no record. */
const CallBackRow = z.object({
  id: Id,
  version: Version,
  cause: z.enum(callBackCauses),
  dueDay: Day,
  siteId: Id.nullable(),
  siteLabel: z.string().nullable(),
  town: z.string().nullable(),
  whom: WhomToCall.nullable(),
  callerName: z.string().nullable(),
  callerPhone: z.string().nullable(),
  note: z.string().nullable(),
  /** The call it came from, in the caller's words. */
  sees: z.enum(callComplaints).nullable(),
  words: z.string().nullable(),
  job: z.object({ id: Id, kind: z.enum(jobKinds) }).nullable(),
  /** What was promised and is not kept. */
  promised: z.object({ from: Instant, until: Instant }).nullable(),
  /** Somebody tried before. */
  tried: z.boolean(),
})
export type CallBackRow = z.infer<typeof CallBackRow>

/** What a call about a site wants to know at once. */
const CallSite = z.object({
  siteId: Id,
  siteLabel: z.string(),
  town: z.string().nullable(),
  whom: WhomToCall,
  softeners: z.array(
    z.object({
      id: Id,
      label: z.string(),
      /** Its bed in service, where there is exactly one. */
      bedId: Id.nullable(),
      lastSeenDay: Day.nullable(),
      /** What would narrow its due date most; null where nothing is worth asking. */
      question: z.enum(questionKeys).nullable(),
    }),
  ),
  /** The last rebed done here: what a complaint would be about. */
  lastRebed: z.object({ visitId: Id, day: Day }).nullable(),
  calls: z.array(CallRow),
  callBacks: z.array(CallBackRow),
})
export type CallSite = z.infer<typeof CallSite>

const Follows = z.discriminatedUnion('what', [
  z.object({ what: z.literal('nothing') }),
  z.object({ what: z.literal('visit'), visit: z.enum(calledForVisits) }),
  z.object({ what: z.literal('materials') }),
  z.object({ what: z.literal('quote'), day: Day }),
  z.object({ what: z.literal('call-back'), day: Day }),
])

export const RecordCall = command({
  /** Null: the caller is on no record. */
  siteId: Id.nullable(),
  softenerId: Id.nullable(),
  callerName: line(120),
  callerPhone: line(60),
  sees: z.enum(callComplaints).nullable(),
  words: line(2000),
  advised: line(2000),
  /** The caller says that the water is soft today. */
  stillSoft: z.boolean(),
  /** The caller says since when it is hard: a day. */
  hardSinceDay: Day.nullable(),
  /** The same as people say it: "spring", "March", "2025"; goes before the day. */
  hardSince: line(60).optional(),
  follows: Follows,
})
export type RecordCall = z.infer<typeof RecordCall>

export const SettleCallBack = command({ callBackId: Id, version: Version, outcome: z.enum(callBackOutcomes), note: line(500) })
export type SettleCallBack = z.infer<typeof SettleCallBack>

export const calls = {
  /** Calls, the last first. */
  list: oc.route({ method: 'GET', path: '/calls' }).input(page({})).output(pageOf(CallRow)),
  /** Whom to call, due first. */
  callBacks: oc.route({ method: 'GET', path: '/calls/backs' }).output(z.array(CallBackRow)),
  ofSite: oc
    .route({ method: 'GET', path: '/calls/of-site/{siteId}' })
    .input(z.object({ siteId: Id }))
    .output(CallSite),
  record: oc
    .route({ method: 'POST', path: '/calls' })
    .input(RecordCall)
    .output(z.object({ callId: Id, jobId: Id.nullable(), callBackId: Id.nullable() })),
  settle: oc
    .route({ method: 'POST', path: '/calls/settle' })
    .input(SettleCallBack)
    .output(z.object({ callBackId: Id, version: Version, state: z.enum(['open', 'done']), dueDay: Day })),
}
