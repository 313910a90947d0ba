import { auth } from '@almanac/identity/auth'
import { AUTH_PATHS } from '@almanac/identity/auth-hooks'
import { BEGIN_PASSKEY, beginPasskey } from '@almanac/identity/begin-passkey'
import { unlessLost } from '@almanac/identity/lost-database'
import { countRequest } from '@almanac/identity/request-limit'
import { AppError } from '@almanac/runtime/errors'
import { BODY_BYTES, bodyWithin } from '@/server/body'
import { requestContext } from '@/server/request-context'
import { toWireError } from '@/server/wire-error'

export const dynamic = 'force-dynamic'

const nothingHere = () => new AppError('not-found', 'There’s nothing at this address. Nothing was changed; start from the sign-in page.')

/** Hands sign-in's requests to its library, once the body is known to be small. Refusals have the shape of the library's own. */
async function handle(request: Request): Promise<Response> {
  const context = requestContext(request.headers)
  try {
    await countRequest(`address ${context.address}`)
    const path = new URL(request.url).pathname.slice('/api/auth'.length)
    const begins = path === BEGIN_PASSKEY && request.method === 'POST'
    if (!begins && !AUTH_PATHS.includes(path)) throw nothingHere()
    const body = request.method === 'GET' ? undefined : new Uint8Array(await bodyWithin(request, BODY_BYTES.signIn))
    const read = new Request(request.url, { method: request.method, headers: request.headers, body })
    return await unlessLost(() => (begins ? beginPasskey(read) : auth().handler(read)))
  } catch (error) {
    const wire = toWireError(error, context)
    const headers: Record<string, string> = wire.data.retryable ? { 'retry-after': '5' } : {}
    return Response.json({ code: wire.data.code, message: wire.message }, { status: wire.status, headers })
  }
}

export { handle as GET, handle as POST }
