import http from 'node:http'
import type { AddressInfo } from 'node:net'

export type TakenText = { id: string; to: string; from: string; text: string }

/** What the server says to one text: a status, or nothing any more with the text in its hands. */
type Answer = number | 'hang-up' | undefined

/** A real text server on this machine, by docs/texts.md, that keeps what it takes and what it was sent with. */
export async function textServer({ answer }: { answer?: (text: TakenText) => Answer } = {}) {
  const taken: TakenText[] = []
  const heads: http.IncomingHttpHeaders[] = []
  const server = http.createServer((request, response) => {
    const parts: Buffer[] = []
    request.on('data', (part: Buffer) => parts.push(part))
    request.on('end', () => {
      heads.push(request.headers)
      const text = JSON.parse(Buffer.concat(parts).toString('utf8')) as TakenText
      const status = answer?.(text) ?? 202
      if (status === 'hang-up' || status < 300) taken.push(text)
      if (status === 'hang-up') return request.socket.destroy()
      response.writeHead(status, { connection: 'close' }).end()
    })
  })
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready))
  const { port } = server.address() as AddressInfo
  const close = () => new Promise<void>((closed) => server.close(() => closed()))
  return { url: `http://127.0.0.1:${port}/texts`, taken, heads, close }
}
