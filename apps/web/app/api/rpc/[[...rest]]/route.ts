import { RPCHandler } from '@orpc/server/fetch'
import { SimpleCsrfProtectionHandlerPlugin, StrictGetMethodPlugin } from '@orpc/server/plugins'
import { requestContext } from '@/server/request-context'
import { router } from '@/server/router'

export const dynamic = 'force-dynamic'

const handler = new RPCHandler(router, { plugins: [new SimpleCsrfProtectionHandlerPlugin(), new StrictGetMethodPlugin()] })

async function handle(request: Request) {
  const context = requestContext(request.headers)
  const { response } = await handler.handle(request, { prefix: '/api/rpc', context })
  const answer = response ?? new Response('There is nothing at this address.', { status: 404 })
  answer.headers.set('x-request-id', context.requestId)
  answer.headers.set('cache-control', 'no-store')
  return answer
}

export { handle as GET, handle as POST }
