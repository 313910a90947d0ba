import 'server-only'
import { readPublicOffer } from '@almanac/database/read/window-offers'
import { now } from '@almanac/runtime/clock'
import { headers } from 'next/headers'
import { admit } from './admit.ts'
import { offerCalendarPath, offerPath } from './public-paths.ts'
import { requestContext } from './request-context.ts'
import type { WireError } from './wire-error.ts'

/** What the customer's page shows; null for a link that is not known. */
export async function readArrivalLink(token: string) {
  const context = requestContext(await headers())
  try {
    return await admit(context, { link: 'arrival-windows', token }, { link: 'arrival-windows', method: 'GET' }, async ({ record }) => {
      const offer = await readPublicOffer({ companyId: record.companyId, offerId: record.id }, now())
      return offer && { ...offer, sendTo: `/api${offerPath(token)}`, calendar: offerCalendarPath(token) }
    })
  } catch (error) {
    if ((error as WireError).data?.code === 'not-found') return null
    throw error
  }
}
