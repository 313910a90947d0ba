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
 * Ends a body that goes on after its answer. What still comes is taken and thrown away: it stands in the connection before the next request, which would wait
 * for it. A body that goes on for longer is cut off, once the other side has had time to read the answer (RFC 9112, section 9.6).
 */
function endBody(request: IncomingMessage): void {
  if (request.complete) return
  const take = () => {
    while (request.read() !== null);
  }
  request.on('readable', take)
  take()
  setTimeout(() => request.complete || request.socket.destroy(), LINGER_MS).unref()
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

  response.once('finish', () => endBody(request))
  if (path === null || path.includes('\u0000'))
    return refuse(response, 400, 'This address cannot be read, so nothing was done. Check it, or go to the first page and begin there.')
  const takesBody = path.startsWith('/api/')
  if (!takesBody && !['GET', 'HEAD', 'OPTIONS'].includes(request.method ?? ''))
    return refuse(response, 405, 'A page can only be read, so nothing was done.', { allow: 'GET, HEAD' })
  return false
}
