import { closeClients, identityClient } from '@almanac/database/client'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cookiesOf, events, holdLonger, PASSWORD, post, signIn, somebody } from '../../tests/support/own-sign-in.ts'
import { totpCode } from '../../tests/support/totp.ts'
import { inspector, makeCompany } from '../../tests/support/two-firms.ts'
import { auth } from './auth.ts'
import { makePasswordLink } from './members.ts'
import { setPasswordByLink } from './new-password.ts'
import { readLink } from './one-time-link.ts'
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

const somewhere = () => `198.51.100.${++place}`
const jar = (answer: Response) => cookiesOf(answer).join('; ')
const whoIs = (cookie: string) => auth().api.getSession({ headers: new Headers({ cookie }) })

/** Somebody with the second step on: the app's secret, the spare codes, and the session that turned it on. */
async function withSecondStep() {
  const person = await somebody()
  const cookie = jar(await signIn(person.email, PASSWORD, somewhere()))
  const answer = await post('two-factor/enable', { password: PASSWORD }, { cookie })
  const begun = (await answer.json()) as { totpURI: string; backupCodes: string[] }
  const secret = new URL(begun.totpURI).searchParams.get('secret') ?? ''
  const on = await post('two-factor/verify-totp', { code: totpCode(secret, Date.now()) }, { cookie })
  expect(on.status).toBe(200)
  return { ...person, secret, spare: begun.backupCodes, cookie: jar(on) }
}

test('codes are those of RFC 6238, appendix B', () => {
  // "12345678901234567890" in base32; the appendix has eight digits.
  const secret = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ'
  expect([59, 1111111109, 1111111111, 1234567890, 2000000000].map((at) => totpCode(secret, at * 1000, 8))).toEqual([
    ...['94287082', '07081804', '14050471', '89005924', '69279037'],
  ])
})

describe('with a second step', () => {
  test('the password alone signs nobody in; with the code it does, and both are written down', async () => {
    const { email, id, secret } = await withSecondStep()
    const half = await signIn(email, PASSWORD, somewhere())
    expect(await half.json()).toMatchObject({ twoFactorRedirect: true })
    expect(await whoIs(jar(half))).toBeNull()
    const before = await events(id)
    expect(before).toEqual(['signed-in 1', 'second-factor-on 1'])
    expect((await post('two-factor/verify-totp', { code: '000000' }, { cookie: jar(half) })).status).toBe(401)
    const code = totpCode(secret, Date.now())
    const trusting = await post('two-factor/verify-totp', { code, trustDevice: true }, { cookie: jar(half) })
    expect([trusting.status, jar(trusting)]).toEqual([400, ''])
    const whole = await post('two-factor/verify-totp', { code }, { cookie: jar(half) })
    expect(whole.status).toBe(200)
    expect(await whoIs(jar(whole))).toMatchObject({ user: { id } })
    expect(await events(id)).toEqual([...before, 'signed-in 1'])
    // No device is let in without a code afterwards.
    const again = await signIn(email, PASSWORD, somewhere(), jar(whole))
    expect(await again.json()).toMatchObject({ twoFactorRedirect: true })
  })

  test('a spare code signs in once', async () => {
    const { email, id, spare } = await withSecondStep()
    const use = async () => {
      const half = await signIn(email, PASSWORD, somewhere())
      return post('two-factor/verify-backup-code', { code: spare[0] }, { cookie: jar(half) })
    }
    expect(await whoIs(jar(await use()))).toMatchObject({ user: { id } })
    expect((await use()).status).toBe(401)
  })

  test('codes are not guessed at: five a sign-in, and then the password is asked for again', async () => {
    const { email, secret } = await withSecondStep()
    const cookie = jar(await signIn(email, PASSWORD, somewhere()))
    for (let turn = 0; turn < 5; turn++) expect((await post('two-factor/verify-totp', { code: '000000' }, { cookie })).status).toBe(401)
    expect((await post('two-factor/verify-totp', { code: totpCode(secret, Date.now()) }, { cookie })).status).toBe(400)
  })

  test('it is turned off by the password alone, which is not guessed at, and the secret lies encrypted', async () => {
    const { id, email, secret, spare, cookie } = await withSecondStep()
    const { rows } = await db.query('select t::text as line from two_factor t where user_id = $1', [id])
    for (const text of [secret, spare[0] ?? '']) expect(rows[0].line).not.toContain(text)
    const off = (password: string) => post('two-factor/disable', { password }, { cookie })
    for (let turn = 0; turn < 5; turn++) expect((await off(`guess number ${turn}`)).status).toBe(400)
    await holdLonger(db)
    expect((await off(PASSWORD)).status).toBe(429)
    await db.query('delete from sign_in_guard')
    expect((await off(PASSWORD)).status).toBe(200)
    expect(await events(id)).toContain('second-factor-off 1')
    expect(await whoIs(jar(await signIn(email, PASSWORD, somewhere())))).toMatchObject({ user: { id } })
  })

  test('whoever lost the device is let in by an owner’s link', async () => {
    const { id, email } = await withSecondStep()
    const company = { id: await makeCompany(db), name: 'Weir Road Water' } as Who['company']
    await addMembership(id, company.id, 'technician')
    const owner = await somebody()
    await addMembership(owner.id, company.id, 'owner')
    const who = { person: { id: owner.id }, company } as Who
    const { token } = await makePasswordLink(who, id)
    await setPasswordByLink(await readLink('password', token, somewhere()), 'gravel under quiet resin')
    expect(await whoIs(jar(await signIn(email, 'gravel under quiet resin', somewhere())))).toMatchObject({ user: { id } })
    expect(await identityClient().twoFactor.count({ where: { userId: id } })).toBe(0)
  })
})
