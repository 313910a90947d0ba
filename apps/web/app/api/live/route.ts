import { stillIn } from '@almanac/identity/who'
import type { Change } from '@almanac/runtime/live'
import { liveChanges, openStreams, takeStream } from '@/server/live-changes'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const CHECK_EVERY_MS = 5_000

/**
 * Server-sent events: which records of the company changed. Says ids and nothing more; readers fetch under their own rights. The session
 * and the membership are read again at once when something of theirs changed (the database tells), and every few seconds; the stream closes when either has
 * ended, or the role is another.
 */
export function GET(request: Request) {
  return withMember(request, 'any-member', async ({ who: { sessionId, person, company, role } }) => {
    const giveBack = takeStream(person.id)
    const live = liveChanges()
    await live.start().catch((error: unknown) => {
      giveBack()
      throw error
    })
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
        const look = async () => {
          const stays = await stillIn(sessionId, person.id, company.id, role).catch(() => true)
          if (stays) send(': still here\n\n')
          else {
            send('event: ended\ndata: {}\n\n')
            close()
          }
        }
        const leave = live.subscribe(company.id, ({ entity, id, version }: Change) => {
          if (entity === 'member' && id === person.id) void look()
          send(`data: ${JSON.stringify({ entity, id, version })}\n\n`)
        })
        const timer = setInterval(look, CHECK_EVERY_MS)
        close = () => {
          clearInterval(timer)
          leave()
          giveBack()
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
    return new Response(stream, {
      headers: { 'content-type': 'text/event-stream', 'cache-control': 'no-store', 'x-accel-buffering': 'no' },
    })
  })
}
