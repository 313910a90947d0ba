import { closeClients, identityClient } from '@almanac/database/client'
import { forgetConfig } from '@almanac/runtime/config'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cookiesOf, events, holdLonger, PASSWORD, post, signIn, somebody } from '../../tests/support/own-sign-in.ts'
import { softPasskey } from '../../tests/support/soft-passkey.ts'
import { totpCode } from '../../tests/support/totp.ts'
import { inspector, makeCompany } from '../../tests/support/two-firms.ts'
import { auth } from './auth.ts'
import { BEGIN_PASSKEY, beginPasskey } from './begin-passkey.ts'
import { makePasswordLink } from './members.ts'
import { setPasswordByLink } from './new-password.ts'
import { readLink } from './one-time-link.ts'
import { listPasskeys, removePasskey } from './own-passkeys.ts'
import { addMembership } from './people.ts'
import type { Who } from './who.ts'

let db: pg.Client
let place = 0

beforeAll(async () => {
  db = await inspector()
})
afterAll(async () => {
  await closeClients()
  await db.end()
})

const TABLET = 'Mozilla/5.0 (Linux; Android 14; SM-X510) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/131.0.0.0 Safari/537.36'
const somewhere = () => `198.51.101.${++place}`
const jar = (answer: Response) => cookiesOf(answer).join('; ')
const whoIs = (cookie: string) => auth().api.getSession({ headers: new Headers({ cookie }) })
const whoOf = (id: string) => ({ person: { id }, sessionId: id }) as Who

const begin = (cookie: string, password = PASSWORD) =>
  beginPasskey(
    new Request(`http://localhost:3000/api/auth${BEGIN_PASSKEY}`, {
      method: 'POST',
      headers: { cookie, 'content-type': 'application/json' },
      body: JSON.stringify({ password }),
    }),
  )
const challengeOf = async (answer: Response) => ((await answer.json()) as { challenge: string }).challenge
type Soft = ReturnType<typeof softPasskey>
type How = Parameters<Soft['make']>[1]

async function add(cookie: string, soft: Soft, how?: How, more: object = {}): Promise<Response> {
  const begun = await begin(cookie)
  const response = soft.make(await challengeOf(begun), how)
  return post('passkey/verify-registration', { response, ...more }, { cookie: `${cookie}; ${jar(begun)}`, 'user-agent': TABLET })
}
async function use(soft: Soft, how?: How): Promise<Response> {
  const asked = await auth().handler(new Request('http://localhost:3000/api/auth/passkey/generate-authenticate-options'))
  const response = soft.use(await challengeOf(asked), how)
  return post('passkey/verify-authentication', { response }, { cookie: jar(asked) })
}
async function withPasskey() {
  const person = await somebody()
  const cookie = jar(await signIn(person.email, PASSWORD, somewhere()))
  const soft = softPasskey()
  expect((await add(cookie, soft)).status).toBe(200)
  return { ...person, cookie, soft }
}

describe('a passkey', () => {
  test('is added after the password, named by what it was added on, and signs in; all of it is written down', async () => {
    const { id, soft } = await withPasskey()
    const [own] = await listPasskeys(whoOf(id))
    expect(own).toMatchObject({ device: { kind: 'tablet', browser: 'Chrome', system: 'Android' }, keptBy: null, lastUsedAt: null })
    const answer = await use(soft)
    expect([answer.status, await whoIs(jar(answer))]).toMatchObject([200, { user: { id } }])
    expect((await listPasskeys(whoOf(id)))[0]?.lastUsedAt).not.toBeNull()
    expect(await events(id)).toEqual(['signed-in 1', 'passkey-added 1', 'signed-in 1'])
  })

  test('stands for both steps of whoever has a second one; their password still asks for the code', async () => {
    const { id, email, cookie, soft } = await withPasskey()
    const begun = (await (await post('two-factor/enable', { password: PASSWORD }, { cookie })).json()) as { totpURI: string }
    const code = totpCode(new URL(begun.totpURI).searchParams.get('secret') ?? '', Date.now())
    expect((await post('two-factor/verify-totp', { code }, { cookie })).status).toBe(200)
    expect(await (await signIn(email, PASSWORD, somewhere())).json()).toMatchObject({ twoFactorRedirect: true })
    expect(await whoIs(jar(await use(soft)))).toMatchObject({ user: { id } })
  })

  test('whose device did not ask for a PIN is neither taken in nor let in', async () => {
    const { cookie, soft } = await withPasskey()
    const unasked = await add(cookie, softPasskey(), { verified: false })
    expect([unasked.status, await unasked.json()]).toMatchObject([403, { code: 'PASSKEY_UNVERIFIED' }])
    const answer = await use(soft, { verified: false })
    expect([answer.status, jar(answer).includes('session_token')]).toEqual([403, false])
  })

  test('is bound to the address that is served', async () => {
    const { id, cookie, soft } = await withPasskey()
    for (const how of [{ origin: 'http://localhost.example:3000' }, { rpId: 'example' }]) {
      expect((await add(cookie, softPasskey(), how)).status).toBe(500)
      expect((await use(soft, how)).status).toBe(400)
    }
    expect(await events(id)).toEqual(['signed-in 1', 'passkey-added 1', 'sign-in-failed 2'])
  })

  test('is not begun without the password, which is not guessed at', async () => {
    const person = await somebody()
    const cookie = jar(await signIn(person.email, PASSWORD, somewhere()))
    await expect(begin('')).rejects.toMatchObject({ code: 'unauthenticated' })
    for (let turn = 0; turn < 5; turn++) await expect(begin(cookie, `guess number ${turn}`)).rejects.toMatchObject({ code: 'invalid' })
    await holdLonger(db)
    await expect(begin(cookie)).rejects.toMatchObject({ code: 'rate-limited' })
  })

  test('comes with no name, no session and nobody else’s answer', async () => {
    const { id, cookie } = await withPasskey()
    for (const more of [{ createSession: true }, { name: '<b>mine</b>' }])
      expect((await add(cookie, softPasskey(), undefined, more)).status).toBe(400)
    expect(await identityClient().session.count({ where: { userId: id } })).toBe(1)
    expect(await listPasskeys(whoOf(id))).toHaveLength(1)
    const other = await withPasskey()
    const begun = await begin(cookie)
    const response = softPasskey().make(await challengeOf(begun))
    const stolen = await post('passkey/verify-registration', { response }, { cookie: `${other.cookie}; ${jar(begun)}` })
    expect(stolen.status).toBe(401)
  })

  test('answers once: what was overheard signs nobody in again', async () => {
    const { soft } = await withPasskey()
    const asked = await auth().handler(new Request('http://localhost:3000/api/auth/passkey/generate-authenticate-options'))
    const response = soft.use(await challengeOf(asked))
    const go = () => post('passkey/verify-authentication', { response }, { cookie: jar(asked) })
    expect([(await go()).status, (await go()).status]).toEqual([200, 400])
  })

  test('that was removed signs nobody in; nobody else removes it', async () => {
    const { id, soft } = await withPasskey()
    const [own] = await listPasskeys(whoOf(id))
    const stranger = await somebody()
    await expect(removePasskey(whoOf(stranger.id), own?.id ?? '')).rejects.toMatchObject({ code: 'not-found' })
    expect((await use(soft)).status).toBe(200)
    await removePasskey(whoOf(id), own?.id ?? '')
    const answer = await use(soft)
    expect([answer.status, await answer.json()]).toMatchObject([401, { code: 'PASSKEY_NOT_FOUND' }])
    expect(await events(id)).toContain('passkey-removed 1')
  })

  test('of whoever lost the device goes with an owner’s link', async () => {
    const { id, soft } = await withPasskey()
    const company = { id: await makeCompany(db), name: 'Weir Road Water' } as Who['company']
    await addMembership(id, company.id, 'technician')
    const owner = await somebody()
    await addMembership(owner.id, company.id, 'owner')
    const { token } = await makePasswordLink({ person: { id: owner.id }, company } as Who, id)
    await setPasswordByLink(await readLink('password', token, somewhere()), 'gravel under quiet resin')
    expect((await use(soft)).status).toBe(401)
    expect(await events(id)).toContain('passkey-removed 1')
  })

  test('of the demo’s people lets nobody in where other machines are served', async () => {
    const { id, soft } = await withPasskey()
    await db.query('update person set email = $2 where id = $1', [id, `${id}@larkmoor.example.com`])
    expect((await use(soft)).status).toBe(200)
    process.env.HOST = '0.0.0.0'
    forgetConfig()
    const answer = await use(soft)
    delete process.env.HOST
    forgetConfig()
    expect([answer.status, await answer.json()]).toMatchObject([403, { code: 'DEMO_ELSEWHERE' }])
  })
})
