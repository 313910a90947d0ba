import { randomBytes } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'
import type net from 'node:net'
import { ADDRESS_HEADER } from '@almanac/identity/client-address'
import { addressOf } from './address.ts'
import { securityHeaders } from './headers.ts'

export type Look = { trusted: net.BlockList; https: boolean; development: boolean }

/** An answer is given while the body still comes: the other side has this long to read it before the connection is cut. */
const LINGER_MS = 5_000

/**
 * Says, where an answer begins before its body has come whole, that it is the connection's last: another request must not stand in line behind that body. What
 * still comes is taken and thrown away, so that the other side can read the answer; then, or after a while, the connection ends (RFC 9112, section 9.6).
 */
function endAfterAnswer(request: IncomingMessage, response: ServerResponse): void {
  const { headers, socket } = request
  if (headers['transfer-encoding'] === undefined && Number(headers['content-length'] ?? 0) === 0) return
  const writeHead = response.writeHead as (...given: unknown[]) => ServerResponse
  response.writeHead = (...given: unknown[]) => {
    if (!request.complete) {
      response.setHeader('connection', 'close')
      endWithBody(request, socket)
    }
    return writeHead.apply(response, given)
  }
}

/** Puts off what the server does when a connection's last answer is written: with a body still coming, the answer would be lost with the connection. */
function endWithBody(request: IncomingMessage, socket: net.Socket): void {
  const destroySoon = socket.destroySoon.bind(socket)
  socket.destroySoon = () => {
    const late = setTimeout(() => socket.destroy(), LINGER_MS).unref()
    const end = () => {
      clearTimeout(late)
      destroySoon()
    }
    if (request.complete) return end()
    const take = () => {
      while (request.read() !== null);
    }
    request.on('readable', take)
    request.once('end', end)
    take()
  }
}

/** The path with its escapes read; null where they are none. */
function readPath(url: string | undefined): string | null {
  try {
    return decodeURIComponent(url?.split('?')[0] ?? '')
  } catch {
    return null
  }
}

function refuse(response: ServerResponse, status: number, sentence: string, headers: Record<string, string> = {}): true {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store', ...headers })
  response.end(`${sentence}\n`)
  return true
}

/**
 * The first look at a request, before the framework's: writes down where it came from, over whatever it says of that itself, sets the headers of the answer, and
 * cuts off a body that goes on after the answer. Answers by itself, and returns true, what the framework would stumble over: an address that cannot be read, or
 * a body for a page.
 */
export function firstLook(request: IncomingMessage, response: ServerResponse, look: Look): boolean {
  const { headers, socket } = request
  const isProxied = look.trusted.check(socket.remoteAddress ?? '', socket.remoteFamily === 'IPv6' ? 'ipv6' : 'ipv4')
  headers[ADDRESS_HEADER] = addressOf(socket.remoteAddress, [headers['x-forwarded-for']].flat().join(','), look.trusted)
  if (!isProxied)
    for (const name of ['x-forwarded-for', 'x-forwarded-host', 'x-forwarded-proto', 'x-forwarded-port', 'forwarded']) delete headers[name]

  const nonce = randomBytes(16).toString('base64')
  const path = readPath(request.url)
  const answered = securityHeaders(path ?? '/', nonce, look)
  for (const [name, value] of Object.entries(answered)) response.setHeader(name, value)
  // The framework takes the nonce for its own scripts from here.
  headers['content-security-policy'] = answered['Content-Security-Policy']

  endAfterAnswer(request, response)
  if (path === null || path.includes('\u0000'))
    return refuse(response, 400, 'This address can’t be read, so nothing was done. Check it, or start from the first page.')
  const takesBody = path.startsWith('/api/')
  if (!takesBody && !['GET', 'HEAD', 'OPTIONS'].includes(request.method ?? ''))
    return refuse(response, 405, 'A page can only be read, so nothing was done.', { allow: 'GET, HEAD' })
  return false
}
