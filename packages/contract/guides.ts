import { kitWays } from '@almanac/records/asked-for'
import { guideMeasures } from '@almanac/records/guide-measure'
import { guideEnds, guideStates } from '@almanac/records/guide-state'
import { guidePhotographKinds } from '@almanac/records/picture-kind'
import { procedureSteps } from '@almanac/records/procedure-step'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant, Version } from './shared.ts'

/** A link by which an owner measures, and what came in by it. */
const GuideLine = z.object({
  id: Id,
  version: Version,
  softenerLabel: z.string(),
  createdAt: Instant,
  linkUntil: Instant,
  /** The owner’s link while it works, to be put behind the app’s address; null once it ended. */
  path: z.string().nullable(),
  entries: z.array(z.object({ measure: z.enum(guideMeasures), valueIn: z.number(), at: Instant })),
  /** The latest first. */
  photographs: z.array(z.object({ id: Id, kind: z.enum(guidePhotographKinds), at: Instant })),
  state: z.enum(guideStates),
  /** Where the owner is; null before the steps were sent. */
  step: z.enum(procedureSteps).nullable(),
  toFix: z.string().nullable(),
  ended: z.enum(guideEnds).nullable(),
  /** The visit that it became. */
  jobId: Id.nullable(),
  /** The beds in service of this softener that an owner may rebed alone, by the last kept answer; empty once the steps were sent. */
  goBeds: z.array(Id),
})
export type GuideLine = z.infer<typeof GuideLine>

export const BeginGuide = command({ softenerId: Id })
export type BeginGuide = z.infer<typeof BeginGuide>
export const WithdrawGuide = command({ guideId: Id, version: Version })
export type WithdrawGuide = z.infer<typeof WithdrawGuide>

/** Where a guide stands after a command. */
const GuideNow = z.object({ guideId: Id, version: Version })
export type GuideNow = z.infer<typeof GuideNow>
export const SendSteps = command({ guideId: Id, version: Version, bedId: Id })
export type SendSteps = z.infer<typeof SendSteps>
export const ReleaseHold = command({ guideId: Id, version: Version })
export type ReleaseHold = z.infer<typeof ReleaseHold>
export const FixHold = command({ guideId: Id, version: Version, toFix: z.string().trim().min(1).max(300) })
export type FixHold = z.infer<typeof FixHold>
export const GuideVisit = command({ guideId: Id, version: Version })
export type GuideVisit = z.infer<typeof GuideVisit>
/** A kit for an owner who rebeds alone, from what is on record of the tank. */
export const OrderKit = command({ bedId: Id, way: z.enum(kitWays) })
export type OrderKit = z.infer<typeof OrderKit>

export const guides = {
  /** The latest first. */
  ofSite: oc
    .route({ method: 'GET', path: '/guides/of-site/{siteId}' })
    .input(z.object({ siteId: Id }))
    .output(z.array(GuideLine)),
  begin: oc
    .route({ method: 'POST', path: '/guides' })
    .input(BeginGuide)
    .output(z.object({ guideId: Id, version: Version })),
  withdraw: oc.route({ method: 'POST', path: '/guides/withdraw' }).input(WithdrawGuide).output(GuideNow),
  sendSteps: oc.route({ method: 'POST', path: '/guides/send-steps' }).input(SendSteps).output(GuideNow),
  releaseHold: oc.route({ method: 'POST', path: '/guides/release-hold' }).input(ReleaseHold).output(GuideNow),
  fixHold: oc.route({ method: 'POST', path: '/guides/fix-hold' }).input(FixHold).output(GuideNow),
  visitInstead: oc.route({ method: 'POST', path: '/guides/visit-instead' }).input(GuideVisit).output(GuideNow),
  orderKit: oc
    .route({ method: 'POST', path: '/guides/order-kit' })
    .input(OrderKit)
    .output(z.object({ jobId: Id, notKept: z.array(z.string()) })),
}
