import 'server-only'
import type { LinkPurpose } from '@almanac/records/one-time-link'
import { headers } from 'next/headers'
import { admit } from './admit.ts'
import type { OneTimeContext } from './context.ts'
import { requestContext } from './request-context.ts'
import type { WireError } from './wire-error.ts'

/** What a link's page shows: the link and who is signed in besides; or, for one that does not work, the sentence that says so. */
export async function readOneTimePage(purpose: LinkPurpose, token: string): Promise<OneTimeContext | { refused: string }> {
  const context = requestContext(await headers())
  try {
    return await admit(context, { once: purpose, token }, { link: purpose, method: 'GET' }, async (admitted) => admitted)
  } catch (error) {
    const wire = error as WireError
    if (wire.data?.code === 'not-found' || wire.data?.code === 'rate-limited') return { refused: wire.message }
    throw error
  }
}
