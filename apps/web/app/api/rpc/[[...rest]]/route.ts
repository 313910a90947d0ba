import { RPCHandler } from '@orpc/server/fetch'
import { SimpleCsrfProtectionHandlerPlugin, StrictGetMethodPlugin } from '@orpc/server/plugins'
import { identify } from '@/server/admit'
import { BODY_BYTES, jsonWithin } from '@/server/body'
import type { RequestContext } from '@/server/context'
import { requestContext } from '@/server/request-context'
import { router } from '@/server/router'
import { toWireError } from '@/server/wire-error'

export const dynamic = 'force-dynamic'

type Incoming = RequestContext & { incoming: Request }

const handler = new RPCHandler<Incoming>(router, {
  plugins: [new SimpleCsrfProtectionHandlerPlugin(), new StrictGetMethodPlugin()],
  interceptors: [
    // Who asks is known before the library reads a byte of the body, and what it then reads is within the limits.
    async ({ next, ...options }) => {
      const { context, request } = options
      const asWire = (error: unknown): never => {
        throw toWireError(error, context)
      }
      await identify(context).catch(asWire)
      const body = () => jsonWithin(context.incoming, BODY_BYTES.procedure).catch(asWire)
      return next({ ...options, request: { ...request, headers: request.headers, body } })
    },
  ],
})

async function handle(request: Request) {
  const context = requestContext(request.headers)
  const { response } = await handler.handle(request, { prefix: '/api/rpc', context: { ...context, incoming: request } })
  const answer = response ?? new Response('There’s nothing at this address.', { status: 404 })
  answer.headers.set('x-request-id', context.requestId)
  answer.headers.set('cache-control', 'no-store')
  if (answer.status === 503) answer.headers.set('retry-after', '5')
  return answer
}

export { handle as GET, handle as POST }
