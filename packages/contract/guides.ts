import { guideMeasures } from '@almanac/records/guide-measure'
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
})
export type GuideLine = z.infer<typeof GuideLine>

export const BeginGuide = command({ softenerId: Id })
export type BeginGuide = z.infer<typeof BeginGuide>
export const WithdrawGuide = command({ guideId: Id, version: Version })
export type WithdrawGuide = z.infer<typeof WithdrawGuide>

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
  withdraw: oc
    .route({ method: 'POST', path: '/guides/withdraw' })
    .input(WithdrawGuide)
    .output(z.object({ guideId: Id, version: Version })),
}
