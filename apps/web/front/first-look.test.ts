import http from 'node:http'
import net, { type AddressInfo } from 'node:net'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { trustedProxies } from './address.ts'
import { firstLook } from './first-look.ts'

/** What the framework behind the front would see. */
let seen: http.IncomingHttpHeaders = {}
let port = 0
const look = { trusted: trustedProxies([]), https: true, development: false }
const server = http.createServer((request, response) => {
  if (firstLook(request, response, look)) return
  seen = request.headers
  // As the framework does for a handler that refuses at once: it takes the first piece of the body and leaves the rest.
  if (request.method === 'POST') void request[Symbol.asyncIterator]().next()
  response.end('framework')
})

beforeAll(async () => {
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  port = (server.address() as AddressInfo).port
})
afterAll(() => {
  server.closeAllConnections()
  server.close()
})

const ask = (path: string, options: http.RequestOptions = {}) =>
  new Promise<{ status: number; headers: http.IncomingHttpHeaders; text: string }>((resolve, reject) => {
    const request = http.request({ host: '127.0.0.1', port, path, ...options }, (response) => {
      let text = ''
      response.on('data', (piece) => {
        text += piece
      })
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }))
    })
    request.on('error', reject)
    request.end()
  })

describe('the first look at a request', () => {
  test.each(['/sites/%ff', '/api/rpc/%ff/x', '/%', '/sites/%E0%A4%A', '/sites/%00'])(
    'answers %s with a sentence, not with a failure',
    async (path) => {
      const { status, text } = await ask(path)
      expect([status, text]).toEqual([400, expect.stringContaining('can’t be read, so nothing was done')])
    },
  )

  test.each(['POST', 'PUT', 'DELETE', 'PATCH'])('lets no %s through to a page, and through to the API', async (method) => {
    expect((await ask('/sites', { method })).status).toBe(405)
    expect((await ask('/api/rpc/sites/list', { method })).text).toBe('framework')
  })

  test('writes the address over what the request says, and takes away what else it says of its way', async () => {
    const forged = {
      'x-almanac-address': '198.51.100.1',
      'x-forwarded-for': '198.51.100.1',
      'x-forwarded-host': 'evil.example',
      forwarded: 'for=1.1.1.1',
    }
    await ask('/', { headers: forged })
    expect(seen).toMatchObject({ 'x-almanac-address': '127.0.0.1' })
    for (const name of ['x-forwarded-for', 'x-forwarded-host', 'forwarded']) expect(seen[name]).toBeUndefined()
  })

  test('gives each answer a nonce of its own, the framework the same, and no script without it', async () => {
    const policies = [await ask('/sites'), await ask('/sites')].map(({ headers }) => String(headers['content-security-policy']))
    expect(seen['content-security-policy']).toBe(policies[1])
    const nonces = policies.map((policy) => /script-src 'self' 'nonce-([\w+/]{22}==)';/.exec(policy)?.[1])
    expect(new Set(nonces).size).toBe(2)
    expect(nonces).not.toContain(undefined)
    expect(policies[0]).not.toMatch(/script-src[^;]*unsafe/)
  })

  test('tells the next page’s server nothing of a link’s address, and the browser what it may not do', async () => {
    for (const path of ['/arrival/abc', '/api/arrival/abc/calendar', '/api/calendar/abc'])
      expect((await ask(path)).headers['referrer-policy']).toBe('no-referrer')
    const { headers } = await ask('/sites')
    expect(headers).toMatchObject({ 'referrer-policy': 'same-origin', 'x-content-type-options': 'nosniff', 'x-frame-options': 'DENY' })
    expect(headers['strict-transport-security']).toBe('max-age=31536000')
    expect(headers['permissions-policy']).toContain('geolocation=()')
  })

  const big = (path: string, agent: http.Agent) =>
    new Promise<{ text: string; headers: http.IncomingHttpHeaders; socket: unknown }>((resolve, reject) => {
      const headers = { 'content-length': 40_000_000 }
      const request = http.request({ host: '127.0.0.1', port, path, method: 'POST', headers, agent }, (response) => {
        let text = ''
        response.on('data', (piece) => {
          text += piece
        })
        response.on('end', () => resolve({ text, headers: response.headers, socket: request.socket }))
      })
      request.on('error', reject)
      request.end(Buffer.alloc(40_000_000))
    })

  test.each([
    ['/api/x', 'framework'],
    ['/sites', 'A page can only be read'],
  ])(
    'answers %s whole, while a body that nobody reads still comes, and says that the connection ends: no request waits behind it',
    async (path, answer) => {
      const agent = new http.Agent({ keepAlive: true, maxSockets: 1 })
      const first = await big(path, agent)
      expect(first.text).toContain(answer)
      expect(first.headers.connection).toBe('close')
      expect((await ask('/second', { agent })).text).toBe('framework')
      agent.destroy()
    },
  )

  test('keeps a connection whose body was read, or that brought none', async () => {
    const agent = new http.Agent({ keepAlive: true, maxSockets: 1 })
    expect((await ask('/sites', { agent })).headers.connection).toBe('keep-alive')
    const read = await ask('/api/read', { method: 'POST', agent, headers: { 'content-length': 0 } })
    expect(read.headers.connection).toBe('keep-alive')
    agent.destroy()
  })

  test('cuts off a body that goes on after the answer', async () => {
    const socket = net.connect(port, '127.0.0.1')
    let heard = ''
    socket.on('data', (piece) => {
      heard += piece
    })
    socket.on('error', () => {})
    socket.write('POST /sites HTTP/1.1\r\nhost: x\r\ncontent-length: 1000000000\r\n\r\n')
    const timer = setInterval(() => socket.write('x'.repeat(1000)), 100)
    const begun = performance.now()
    await new Promise((done) => socket.once('close', done))
    clearInterval(timer)
    expect(heard).toContain('405')
    expect(performance.now() - begun).toBeLessThan(15_000)
  })
})
