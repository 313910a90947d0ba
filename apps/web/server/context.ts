import 'server-only'
import type { Who } from '@almanac/identity/who'
import type { Logger } from '@almanac/runtime/log'

/** What each procedure starts from: the request, nothing about who asks. */
export type RequestContext = { headers: Headers; requestId: string; log: Logger }

/** What a procedure sees after the wrapper: who asks, and the scope for operations and reads. */
export type SignedContext = RequestContext & { who: Who; scope: { companyId: string; personId: string } }
