import 'server-only'
import { readPublicOffer } from '@almanac/database/read/window-offers'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { openPublicLink } from './public-handler.ts'
import { offerCalendarPath, offerPath } from './public-paths.ts'

/** What the customer's page shows; null for a link that is not known. */
export async function readArrivalLink(token: string) {
  try {
    const { companyId, id } = await openPublicLink('arrival-windows', token)
    const offer = await readPublicOffer({ companyId, offerId: id }, now())
    return offer && { ...offer, sendTo: `/api${offerPath(token)}`, calendar: offerCalendarPath(token) }
  } catch (error) {
    if (error instanceof AppError && error.code === 'not-found') return null
    throw error
  }
}
