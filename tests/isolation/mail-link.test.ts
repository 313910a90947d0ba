import { closeClients, identityClient } from '@almanac/database/client'
import { ADDRESS_HEADER } from '@almanac/identity/client-address'
import { setPasswordByLink } from '@almanac/identity/new-password'
import { readLink } from '@almanac/identity/one-time-link'
import { foundCompany } from '@almanac/identity/set-up'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import { POST } from '../../apps/web/app/api/mail-link/route.ts'
import { mailServer } from '../support/mail-server.ts'
import { holdLonger, PASSWORD, signIn, somebody } from '../support/own-sign-in.ts'
import { inspector } from '../support/two-firms.ts'

vi.mock('server-only', () => ({}))

let db: pg.Client
let server: Awaited<ReturnType<typeof mailServer>>
let place = 0

beforeAll(async () => {
  db = await inspector()
  server = await mailServer()
  process.env.SIGN_IN_TRIES_PER_MINUTE = '10'
})
afterEach(() => {
  vi.unstubAllEnvs()
  forgetConfig()
})
afterAll(async () => {
  await server.close()
  await closeClients()
  await db.end()
})

const somewhere = () => `192.0.2.${++place}`
function serve(settings: Record<string, string> = {}) {
  for (const [name, value] of Object.entries({ SMTP_URL: server.url, MAIL_FROM: 'almanac@firm.example', ...settings }))
    vi.stubEnv(name, value)
  forgetConfig()
}
async function ask(body: object, from = somewhere(), site = 'same-origin') {
  const headers = { 'content-type': 'application/json', 'sec-fetch-site': site, [ADDRESS_HEADER]: from }
  const answer = await POST(new Request('http://localhost:3000/api/mail-link', { method: 'POST', headers, body: JSON.stringify(body) }))
  return { status: answer.status, said: (await answer.text()).replace(/"requestId":"[^"]+"/, '') }
}
/** The link in the mail that came to an address. */
async function mailed(email: string): Promise<string> {
  await vi.waitFor(() => expect(server.taken.some((one) => one.to.includes(email))).toBe(true))
  return /\/(?:new-password|set-up)\/([\w-]{43})/.exec(server.taken.findLast((one) => one.to.includes(email))?.text ?? '')?.[1] ?? ''
}

describe('a forgotten password', () => {
  test('is set anew by a link in a mail, once; nobody learns who signs in here', async () => {
    serve()
    const { email } = await somebody()
    const known = await ask({ purpose: 'password', email: email.toUpperCase() })
    const unknown = await ask({ purpose: 'password', email: `${newId()}@firm.example` })
    expect(known).toEqual({ status: 200, said: '{"asked":true}' })
    expect(unknown).toEqual(known)
    const read = () => mailed(email).then((token) => readLink('password', token, somewhere()))
    await setPasswordByLink(await read(), 'gravel under quiet resin')
    expect((await signIn(email, PASSWORD, somewhere())).status).toBe(401)
    expect((await signIn(email, 'gravel under quiet resin', somewhere())).status).toBe(200)
    await expect(read()).rejects.toMatchObject({ code: 'not-found' })
    expect(server.taken.filter((one) => !one.to.includes(email))).toEqual([])
  })
  test('fills no mailbox, from however many addresses, and no address asks for ever', async () => {
    serve()
    const email = `${newId()}@firm.example`
    for (let turn = 0; turn < 5; turn++) expect((await ask({ purpose: 'password', email })).status).toBe(200)
    await holdLonger(db)
    expect((await ask({ purpose: 'password', email })).status).toBe(429)
    const from = somewhere()
    const statuses: number[] = []
    // Ten in a minute; a slow machine may see two.
    for (let turn = 0; turn < 25; turn++) statuses.push((await ask({ purpose: 'password', email: `${newId()}@firm.example` }, from)).status)
    expect(statuses.filter((status) => status === 200).length).toBeLessThanOrEqual(20)
    expect(statuses).toContain(429)
  })
  test.each([
    [{ purpose: 'password', email: 'nobody' }, 'same-origin', 400],
    [{ purpose: 'invitation', email: 'otis@firm.example' }, 'same-origin', 400],
    [{ purpose: 'password', email: 'otis@firm.example' }, 'cross-site', 403],
  ])('is not asked for by %j from a page of %s', async (body, site, status) => {
    serve()
    expect((await ask(body, somewhere(), site)).status).toBe(status)
  })
  test('without a mail server is told to ask an owner', async () => {
    const answer = await ask({ purpose: 'password', email: 'otis@firm.example' })
    expect([answer.status, answer.said]).toEqual([404, expect.stringContaining('ask an owner')])
  })
})

describe('a stranger', () => {
  const company = {
    ...{ name: 'Stranger Water', telephone: null, locale: 'en-US', unitSystem: 'us' as const, timeZone: 'America/Chicago' },
    ...{ currency: 'USD', paper: 'letter' as const, dayStartMinute: 480, dayEndMinute: 1020 },
  }
  test('founds no company by the usual setting', async () => {
    serve()
    expect((await ask({ purpose: 'set-up', email: 'ines@firm.example' })).status).toBe(404)
    expect(await identityClient().oneTimeLink.count({ where: { purpose: 'set-up' } })).toBe(0)
  })
  test('founds one where the setting lets them, with the email that the link went to', async () => {
    serve({ FOUNDING: 'open' })
    const email = `${newId()}@firm.example`
    expect((await ask({ purpose: 'set-up', email })).status).toBe(200)
    const link = await readLink('set-up', await mailed(email), somewhere())
    await expect(foundCompany(link, company, { name: 'Ines', email: `x${email}`, password: PASSWORD })).rejects.toMatchObject({
      code: 'invalid',
    })
    const { companyId } = await foundCompany(link, company, { name: 'Ines', email, password: PASSWORD })
    expect(await identityClient().membership.count({ where: { companyId, role: 'owner' } })).toBe(1)
  })
})
