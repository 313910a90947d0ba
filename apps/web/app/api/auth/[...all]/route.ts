import { auth } from '@almanac/identity/auth'
import { BODY_BYTES, bodyWithin } from '@/server/body'
import { requestContext } from '@/server/request-context'
import { toWireError } from '@/server/wire-error'

export const dynamic = 'force-dynamic'

/** Hands sign-in's requests to its library, once the body is known to be small. Refusals have the shape of the library's own. */
async function handle(request: Request): Promise<Response> {
  try {
    const body = request.method === 'GET' ? undefined : new Uint8Array(await bodyWithin(request, BODY_BYTES.signIn))
    return await auth().handler(new Request(request.url, { method: request.method, headers: request.headers, body }))
  } catch (error) {
    const wire = toWireError(error, requestContext(request.headers))
    return Response.json({ code: wire.data.code, message: wire.message }, { status: wire.status })
  }
}

export { handle as GET, handle as POST }
