import 'server-only'
import type { OneTimeLink } from '@almanac/identity/one-time-link'
import type { SignedInPerson, Who } from '@almanac/identity/who'
import type { Logger } from '@almanac/runtime/log'

/** What each request starts from. `address` is where it came from; `who` is read once, by `admit` alone. */
export type RequestContext = { headers: Headers; requestId: string; log: Logger; address: string; who?: Who }

/** What a procedure or route sees once a person was admitted: who asks, and the scope for operations and reads. */
export type SignedContext = RequestContext & { who: Who; scope: { companyId: string; personId: string } }

/** What a public route sees once a link was admitted: the record it stands for. */
export type LinkContext = RequestContext & { record: { companyId: string; id: string } }

/** What a page or route sees once the holder of a link that works once was admitted: the link, and who is signed in besides, if anyone. */
export type OneTimeContext = RequestContext & { link: OneTimeLink; person: SignedInPerson | null }
