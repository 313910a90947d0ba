import { oc } from '@orpc/contract'
import * as z from 'zod'
import { ClockTime, command, Day, Id, Instant, Version } from './shared.ts'

/** One arrival window: the crew comes between `from` and `until`; the visit is planned to begin at `startsAt`. */
const ArrivalWindow = z.object({
  visitId: Id,
  day: Day,
  from: Instant,
  until: Instant,
  startsAt: Instant,
  crewName: z.string(),
})

/** Windows offered for a job. `path` is the customer's link, to be put behind the app's address. */
export const WindowOffer = z.object({
  id: Id,
  version: Version,
  jobId: Id,
  expiresAt: Instant,
  path: z.string(),
  windows: z.array(ArrivalWindow),
})
export type WindowOffer = z.infer<typeof WindowOffer>

export const OfferWindows = command({
  jobId: Id,
  jobVersion: Version,
  places: z
    .array(z.object({ crewDayId: Id, at: ClockTime }))
    .min(1, 'choose at least one time')
    .max(3, 'offer three times at most'),
  /** How long the crew may be awaited. */
  windowMinutes: z.number().int().min(30).max(480),
  /** How long the times are held. */
  holdHours: z.number().int().min(1).max(168),
})
export type OfferWindows = z.infer<typeof OfferWindows>
export const ConfirmWindow = command({ offerId: Id, version: Version, visitId: Id })
export type ConfirmWindow = z.infer<typeof ConfirmWindow>
export const WithdrawOffer = command({ offerId: Id, version: Version })
export type WithdrawOffer = z.infer<typeof WithdrawOffer>
/** What was promised by telephone, on the clock of the visit's day. */
export const PromiseWindow = command({ visitId: Id, version: Version, from: ClockTime, until: ClockTime })
export type PromiseWindow = z.infer<typeof PromiseWindow>
export const EndFeed = command({ feedId: Id, version: Version })
export type EndFeed = z.infer<typeof EndFeed>
export const BeginFeed = command({})
export type BeginFeed = z.infer<typeof BeginFeed>

/** `office`: of all day sheets, not only the caller's own visits. */
const Feed = z.object({ of: z.enum(['own', 'office']), id: Id, version: Version, createdAt: Instant, path: z.string() })

export const windows = {
  /** The open offer of a job, if there is one. */
  ofJob: oc
    .route({ method: 'GET', path: '/windows/of-job' })
    .input(z.object({ jobId: Id }))
    .output(z.object({ offer: WindowOffer.nullable() })),
  offer: oc
    .route({ method: 'POST', path: '/windows/offer' })
    .input(OfferWindows)
    .output(z.object({ offerId: Id, version: Version })),
  /** What the customer said on the phone. */
  confirm: oc
    .route({ method: 'POST', path: '/windows/confirm' })
    .input(ConfirmWindow)
    .output(z.object({ visitId: Id, jobId: Id, jobVersion: Version })),
  promise: oc
    .route({ method: 'POST', path: '/windows/promise' })
    .input(PromiseWindow)
    .output(z.object({ visitId: Id, version: Version })),
  withdraw: oc
    .route({ method: 'POST', path: '/windows/withdraw' })
    .input(WithdrawOffer)
    .output(z.object({ offerId: Id, version: Version })),
  /** The caller's own calendar addresses that are in use; none for someone who stands on no sheet. */
  feeds: oc.route({ method: 'GET', path: '/windows/feeds' }).output(z.object({ onSheets: z.boolean(), feeds: z.array(Feed) })),
  beginFeed: oc
    .route({ method: 'POST', path: '/windows/begin-feed' })
    .input(BeginFeed)
    .output(z.object({ feedId: Id })),
  beginOfficeFeed: oc
    .route({ method: 'POST', path: '/windows/begin-office-feed' })
    .input(BeginFeed)
    .output(z.object({ feedId: Id })),
  endFeed: oc
    .route({ method: 'POST', path: '/windows/end-feed' })
    .input(EndFeed)
    .output(z.object({ feedId: Id, version: Version })),
}
