import { readWho, stillIn } from '@almanac/identity/who'
import { AppError } from '@almanac/runtime/errors'
import type { Change } from '@almanac/runtime/live'
import { liveChanges, openStreams } from '@/server/live-changes'

export const dynamic = 'force-dynamic'

const CHECK_EVERY_MS = 5_000

/**
 * Server-sent events: which records of the company changed. Says ids and nothing more; readers fetch under their own rights. The session
 * and the membership are read again every few seconds, and the stream closes when either has ended.
 */
export async function GET(request: Request) {
  let who: Awaited<ReturnType<typeof readWho>>
  try {
    who = await readWho(request.headers)
  } catch (error) {
    if (error instanceof AppError) return Response.json({ message: error.message }, { status: error.status })
    throw error
  }
  const { sessionId, person, company } = who
  const live = liveChanges()
  await live.start()
  let close = () => {}
  const stream = new ReadableStream<Uint8Array>({
    start(controller) {
      const encoder = new TextEncoder()
      const send = (text: string) => {
        try {
          controller.enqueue(encoder.encode(text))
        } catch {
          close()
        }
      }
      const leave = live.subscribe(company.id, ({ entity, id, version }: Change) =>
        send(`data: ${JSON.stringify({ entity, id, version })}\n\n`),
      )
      const timer = setInterval(async () => {
        const stays = await stillIn(sessionId, person.id, company.id).catch(() => true)
        if (stays) send(': still here\n\n')
        else {
          send('event: ended\ndata: {}\n\n')
          close()
        }
      }, CHECK_EVERY_MS)
      close = () => {
        clearInterval(timer)
        leave()
        openStreams().delete(close)
        try {
          controller.close()
        } catch {
          // already closed by the other side
        }
      }
      openStreams().add(close)
      request.signal.addEventListener('abort', () => close())
      send(': open\n\n')
    },
    cancel() {
      close()
    },
  })
  return new Response(stream, { headers: { 'content-type': 'text/event-stream', 'cache-control': 'no-store', 'x-accel-buffering': 'no' } })
}
