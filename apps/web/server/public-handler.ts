import 'server-only'
import { type PublicPurpose, readPublicToken } from '@almanac/identity/public-token'
import { countRequest } from '@almanac/identity/request-limit'
import { AppError } from '@almanac/runtime/errors'
import { requestContext } from './request-context.ts'
import { toWireError } from './wire-error.ts'

const NO_SUCH_LINK = 'This link is not known, or is no longer in use. Nothing was changed; ask the firm that sent it for a new one.'

/** Neither search engines nor the next page's server shall learn the address. */
const QUIET = { 'cache-control': 'no-store', 'referrer-policy': 'no-referrer', 'x-robots-tag': 'noindex' }

/** The record a link stands for, counted against the request limit; a wrong token is answered like one that never was. */
export async function openPublicLink(purpose: PublicPurpose, token: string) {
  const record = readPublicToken(purpose, token)
  if (!record) throw new AppError('not-found', NO_SUCH_LINK)
  await countRequest(`link ${record.id}`)
  return record
}

export const noSuchLink = () => new AppError('not-found', NO_SUCH_LINK)

/** Runs a route that works without signing in, for whoever holds the link. The token itself is never logged. */
export async function asHolder(
  request: Request,
  purpose: PublicPurpose,
  token: string,
  work: (record: { companyId: string; id: string }) => Promise<Response>,
): Promise<Response> {
  const context = requestContext(request.headers)
  try {
    const answer = await work(await openPublicLink(purpose, token))
    for (const [name, value] of Object.entries(QUIET)) answer.headers.set(name, value)
    context.log.info({ requestId: context.requestId, link: purpose, method: request.method }, 'request')
    return answer
  } catch (error) {
    const wire = toWireError(error, context)
    return new Response(`${wire.message}\n`, { status: wire.status, headers: { ...QUIET, 'content-type': 'text/plain; charset=utf-8' } })
  }
}

/** A calendar file to download or subscribe to. */
export function calendarAnswer(text: string | null, fileName: string): Response {
  if (text === null) throw noSuchLink()
  return new Response(text, {
    headers: { 'content-type': 'text/calendar; charset=utf-8', 'content-disposition': `attachment; filename="${fileName}"` },
  })
}
