import http from 'node:http'
import { type Body, bodyBytes } from '../../../tests/support/fuzz/hostile-bodies.ts'

export type RawAnswer = { status: number; headers: http.IncomingHttpHeaders; text: string; ms: number }

const PIECE_BYTES = 65_536

/** A body piece by piece, so that a hundred megabytes are never held. As bytes: of a text beyond ASCII in chunks Node's client stops sending after some megabytes. */
function* piecesOf({ head, repeat, times, tail }: Body): Generator<Buffer> {
  yield Buffer.from(head)
  const each = Math.max(1, Math.floor(PIECE_BYTES / Math.max(1, Buffer.byteLength(repeat))))
  for (let left = times; left > 0; left -= each) yield Buffer.from(repeat.repeat(Math.min(left, each)))
  yield Buffer.from(tail)
}

/**
 * Sends one request to 127.0.0.1 as it is given, however odd its path, and answers what came back: status 0 where the connection ended without an answer. `chunked`
 * leaves the length unsaid; `from` is another address of this machine, such as 127.0.0.2.
 */
export function rawRequest(
  port: number,
  request: { method: string; path: string; headers: Record<string, string>; body?: Body; chunked?: boolean; from?: string },
  agent?: http.Agent,
): Promise<RawAnswer> {
  const begun = performance.now()
  return new Promise((resolve) => {
    const end = (status: number, headers: http.IncomingHttpHeaders, text: string) =>
      resolve({ status, headers, text, ms: performance.now() - begun })
    const length = request.body && !request.chunked ? { 'content-length': String(bodyBytes(request.body)) } : {}
    const sent = http.request(
      {
        host: '127.0.0.1',
        port,
        localAddress: request.from,
        method: request.method,
        path: request.path,
        headers: { ...request.headers, ...length },
        agent,
        timeout: 120_000,
      },
      (response) => {
        let text = ''
        response.on('data', (part: Buffer) => {
          if (text.length < 200_000) text += part.toString('utf8')
        })
        response.once('error', () => end(response.statusCode ?? 0, response.headers, text))
        response.once('end', () => end(response.statusCode ?? 0, response.headers, text))
      },
    )
    sent.once('error', (error) => end(0, {}, error.message))
    sent.once('timeout', () => sent.destroy(new Error('no answer within two minutes')))
    if (!request.body) return sent.end()
    const pieces = piecesOf(request.body)
    const write = () => {
      for (let piece = pieces.next(); !piece.done; piece = pieces.next())
        if (!sent.write(piece.value)) {
          if (!sent.destroyed) sent.once('drain', write)
          return
        }
      sent.end()
    }
    write()
  })
}
