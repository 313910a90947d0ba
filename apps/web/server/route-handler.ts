import 'server-only'
import { may, type Permission } from '@almanac/identity/permissions'
import { countRequest } from '@almanac/identity/request-limit'
import { readWho, type Who } from '@almanac/identity/who'
import { AppError } from '@almanac/runtime/errors'
import type { RequestContext } from './context.ts'
import { checkPageCompany } from './page-company.ts'
import { requestContext } from './request-context.ts'
import { toWireError } from './wire-error.ts'

/** Another site's page could send a file with the person's cookie: only our own pages may. Browsers say which page asks. */
function refuseOtherSites(request: Request): void {
  const site = request.headers.get('sec-fetch-site')
  const origin = request.headers.get('origin')
  const isOurs = site
    ? site === 'same-origin'
    : origin !== null && URL.canParse(origin) && new URL(origin).host === request.headers.get('host')
  if (!isOurs)
    throw new AppError(
      'forbidden',
      'This request did not come from a page of this app, so nothing was done. Open the page here and send it again.',
    )
}

type Signed = RequestContext & { who: Who; scope: { companyId: string; personId: string } }

/**
 * Runs a route handler behind the checks every procedure has: session, membership read afresh, permission, rate limit, and for anything but reading that the
 * request comes from our own page. Failures answer as they do there, as JSON.
 */
export async function asMember(request: Request, permission: Permission, work: (context: Signed) => Promise<Response>): Promise<Response> {
  const context = requestContext(request.headers)
  const begun = performance.now()
  const done = (outcome: string) =>
    context.log.info(
      { requestId: context.requestId, route: new URL(request.url).pathname, outcome, ms: Math.round(performance.now() - begun) },
      'request',
    )
  try {
    if (request.method !== 'GET') refuseOtherSites(request)
    const who = await readWho(request.headers)
    checkPageCompany(request.headers, who)
    if (!may(who.role, permission))
      throw new AppError(
        'forbidden',
        `Your role (${who.role}) may not do this. Nothing was changed; ask the owner of your firm if you should.`,
      )
    await countRequest(who.person.id)
    const answer = await work({ ...context, who, scope: { companyId: who.company.id, personId: who.person.id } })
    done('ok')
    return answer
  } catch (error) {
    const wire = toWireError(error, context)
    done(wire.data.code)
    return Response.json({ message: wire.message, ...wire.data }, { status: wire.status, headers: { 'cache-control': 'no-store' } })
  }
}
