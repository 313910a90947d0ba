import 'server-only'
import { clientAddress } from '@almanac/identity/client-address'
import { newId } from '@almanac/runtime/ids'
import { log } from '@almanac/runtime/log'
import type { RequestContext } from './context.ts'

/** The context of one request. A request id from a proxy is kept when it looks like one. */
export function requestContext(headers: Headers): RequestContext {
  const given = headers.get('x-request-id')
  const requestId = given && /^[\w-]{8,64}$/.test(given) ? given : newId()
  return { headers, requestId, log: log(), address: clientAddress(headers) }
}
