import 'server-only'
import type { PublicPurpose } from '@almanac/identity/public-token'
import { AppError } from '@almanac/runtime/errors'
import { admit, type MemberDoor, noSuchLink } from './admit.ts'
import type { LinkContext, SignedContext } from './context.ts'
import { requestContext } from './request-context.ts'
import type { WireError } from './wire-error.ts'
import { toWireError } from './wire-error.ts'

/** Another site's page could send a file with the person's cookie: only our own pages may. Browsers say which page asks. */
export function refuseOtherSites(request: Request): void {
  const site = request.headers.get('sec-fetch-site')
  const origin = request.headers.get('origin')
  const isOurs = site
    ? site === 'same-origin'
    : origin !== null && URL.canParse(origin) && new URL(origin).host === request.headers.get('host')
  if (!isOurs)
    throw new AppError(
      'forbidden',
      'This request didn’t come from a page of this app, so nothing was done. Open the page here and send it again.',
    )
}

/** Retryable failures say when: a client that waits as long does not add to the load. */
const again = (wire: WireError): Record<string, string> => (wire.data.retryable ? { 'retry-after': '5' } : {})

/** Runs a route handler for a signed-in member, behind the door that procedures have. Failures answer as they do there, as JSON. */
export async function withMember(
  request: Request,
  permission: MemberDoor['permission'],
  work: (context: SignedContext) => Promise<Response>,
): Promise<Response> {
  const context = requestContext(request.headers)
  try {
    if (request.method !== 'GET') refuseOtherSites(request)
    return await admit(context, { permission }, { route: new URL(request.url).pathname }, work)
  } catch (error) {
    const wire = toWireError(error, context)
    return Response.json(
      { message: wire.message, ...wire.data },
      { status: wire.status, headers: { 'cache-control': 'no-store', ...again(wire) } },
    )
  }
}

/** Neither search engines nor the next page's server shall learn the address. */
const QUIET = { 'cache-control': 'no-store', 'referrer-policy': 'no-referrer', 'x-robots-tag': 'noindex' }

/** Runs a route that works without signing in, for whoever holds the link. The token itself is never logged. */
export async function withPublicLink(
  request: Request,
  purpose: PublicPurpose,
  token: string,
  work: (context: LinkContext) => Promise<Response>,
): Promise<Response> {
  const context = requestContext(request.headers)
  try {
    const answer = await admit(context, { link: purpose, token }, { link: purpose, method: request.method }, work)
    for (const [name, value] of Object.entries(QUIET)) answer.headers.set(name, value)
    return answer
  } catch (error) {
    const wire = toWireError(error, context)
    return new Response(`${wire.message}\n`, {
      status: wire.status,
      headers: { ...QUIET, 'content-type': 'text/plain; charset=utf-8', ...again(wire) },
    })
  }
}

/** A calendar file to download or subscribe to. */
export function calendarAnswer(text: string | null, fileName: string): Response {
  if (text === null) throw noSuchLink()
  return new Response(text, {
    headers: { 'content-type': 'text/calendar; charset=utf-8', 'content-disposition': `attachment; filename="${fileName}"` },
  })
}
