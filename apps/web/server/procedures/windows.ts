import 'server-only'
import { readOwnFeeds } from '@almanac/database/read/calendar-feeds'
import { readJobOffer } from '@almanac/database/read/window-offers'
import { makePublicToken } from '@almanac/identity/public-token'
import { beginFeed, endFeed } from '@almanac/operations/jobs/calendar-feeds'
import { confirmWindow } from '@almanac/operations/jobs/confirm-window'
import { offerWindows } from '@almanac/operations/jobs/offer-windows'
import { promiseWindow } from '@almanac/operations/jobs/promise-window'
import { withdrawOffer } from '@almanac/operations/jobs/withdraw-offer'
import { now } from '@almanac/runtime/clock'
import { can } from '../procedure.ts'
import { calendarPath, offerPath } from '../public-paths.ts'

export const windows = {
  ofJob: can('read:job').windows.ofJob.handler(async ({ context: { scope }, input }) => {
    const offer = await readJobOffer(scope, input.jobId, now())
    return {
      offer: offer && { ...offer, path: offerPath(makePublicToken('arrival-windows', { companyId: scope.companyId, id: offer.id })) },
    }
  }),
  offer: can('book:visit').windows.offer.handler(({ context, input }) => offerWindows(context.scope, input)),
  confirm: can('book:visit').windows.confirm.handler(({ context, input }) => confirmWindow(context.scope, input)),
  promise: can('book:visit').windows.promise.handler(({ context, input }) => promiseWindow(context.scope, input)),
  withdraw: can('book:visit').windows.withdraw.handler(({ context, input }) => withdrawOffer(context.scope, input)),
  feeds: can('read:own-work').windows.feeds.handler(async ({ context: { scope } }) => {
    const { onSheets, feeds } = await readOwnFeeds(scope)
    const path = (id: string) => calendarPath(makePublicToken('calendar', { companyId: scope.companyId, id }))
    return { onSheets, feeds: feeds.map((feed) => ({ ...feed, path: path(feed.id) })) }
  }),
  beginFeed: can('read:own-work').windows.beginFeed.handler(({ context, input }) => beginFeed(context.scope, input, 'own')),
  beginOfficeFeed: can('book:visit').windows.beginOfficeFeed.handler(({ context, input }) => beginFeed(context.scope, input, 'office')),
  endFeed: can('read:own-work').windows.endFeed.handler(({ context, input }) => endFeed(context.scope, input)),
}
