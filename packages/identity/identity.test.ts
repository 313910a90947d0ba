import { closeClients, identityClient } from '@almanac/database/client'
import type { Role } from '@almanac/records/role'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cookiesOf, events, holdLonger, PASSWORD, post, signIn, somebody } from '../../tests/support/own-sign-in.ts'
import { inspector, makeCompany } from '../../tests/support/two-firms.ts'
import { secondsLeftOfMinute } from '../../tests/support/within-a-minute.ts'
import { auth } from './auth.ts'
import { ADDRESS_HEADER } from './client-address.ts'
import { addMembership, addPerson, endMembership } from './people.ts'
import { stillIn } from './who.ts'

let db: pg.Client
let companyId: string

beforeAll(async () => {
  db = await inspector()
  process.env.SIGN_IN_TRIES_PER_MINUTE = '5'
  companyId = await makeCompany(db)
})
afterAll(async () => {
  await closeClients()
  await db.end()
})

describe('people', () => {
  const email = () => `${newId()}@firm.example`

  test('are one for an e-mail, however it is written, and their password is kept as a hash', async () => {
    const mine = email()
    const id = await addPerson({ name: 'Ada Roe', email: mine.toUpperCase(), password: PASSWORD })
    expect(await addPerson({ name: 'Someone else', email: mine, password: 'another one altogether' })).toBe(id)
    const account = await identityClient().account.findFirst({ where: { userId: id } })
    expect(account?.password).not.toContain(PASSWORD)
    await expect(auth().api.signInEmail({ body: { email: mine, password: 'another one altogether' } })).rejects.toThrow()
    await expect(auth().api.signInEmail({ body: { email: mine, password: PASSWORD } })).resolves.toBeTruthy()
  })

  test('are in a company once: a second role replaces the first, an ended place begins again', async () => {
    const id = await addPerson({ name: 'Ada Roe', email: email(), password: PASSWORD })
    await addMembership(id, companyId, 'technician')
    await addMembership(id, companyId, 'dispatcher')
    await endMembership(id, companyId)
    await addMembership(id, companyId, 'owner')
    const rows = await identityClient().membership.findMany({ where: { personId: id } })
    expect(rows).toMatchObject([{ role: 'owner', endedAt: null }])
    await expect(addMembership(id, companyId, 'king' as Role)).rejects.toThrow()
  })

  test('stay on an open stream while session and membership last', async () => {
    const mine = email()
    const id = await addPerson({ name: 'Ada Roe', email: mine, password: PASSWORD })
    await addMembership(id, companyId, 'owner')
    await auth().api.signInEmail({ body: { email: mine, password: PASSWORD } })
    const session = await identityClient().session.findFirstOrThrow({ where: { userId: id } })
    expect(await stillIn(session.id, id, companyId, 'owner')).toBe(true)
    expect(await stillIn(session.id, id, newId(), 'owner')).toBe(false)
    expect(await stillIn(session.id, id, companyId, 'dispatcher')).toBe(false)
    await endMembership(id, companyId)
    expect(await stillIn(session.id, id, companyId, 'owner')).toBe(false)
    await addMembership(id, companyId, 'owner')
    await identityClient().session.update({ where: { id: session.id }, data: { expiresAt: new Date('2020-01-01') } })
    expect(await stillIn(session.id, id, companyId, 'owner')).toBe(false)
  })

  test('do not sign themselves up', async () => {
    const body = { name: 'Nobody', email: email(), password: PASSWORD }
    await expect(auth().api.signUpEmail({ body })).rejects.toThrow()
    expect(await identityClient().person.count({ where: { email: body.email } })).toBe(0)
  })
})

describe('signing in over HTTP', () => {
  test('sets a cookie that scripts cannot read and other sites do not send', async () => {
    const { email } = await somebody()
    const answer = await signIn(email, PASSWORD, '203.0.113.9')
    expect(answer.status).toBe(200)
    expect(answer.headers.get('set-cookie')).toMatch(/almanac\.session_token=.*HttpOnly.*SameSite=Lax/i)
    const elsewhere = { origin: 'https://elsewhere.example', cookie: 'almanac.session_token=x' }
    expect((await post('sign-in/email', { email, password: PASSWORD }, elsewhere)).status).toBe(403)
  })

  test('is refused after too many tries in a minute from one address, right password or not, whatever a request says of its way', async () => {
    const { email } = await somebody()
    const made = (turn: number) => ({ [ADDRESS_HEADER]: '203.0.113.77', 'x-forwarded-for': `198.51.100.${turn}` })
    const guess = async (turn: number) =>
      (await post('sign-in/email', { email: `${turn}${email}`, password: 'guess number one' }, made(turn))).status
    // Five in a minute; a slow machine may see two minutes.
    let checked = 0
    for (let status = await guess(0); status !== 429; status = await guess(checked)) {
      expect(status).toBe(401)
      expect(++checked).toBeLessThanOrEqual(10)
    }
    expect(checked).toBeGreaterThanOrEqual(5)
    expect((await signIn(email, PASSWORD, '203.0.113.77')).status).toBe(429)
    expect((await signIn(email, PASSWORD, '203.0.113.78')).status).toBe(200)
  })

  test('takes longer and longer at one account, however many addresses guess, and says how long; its owner’s device and place are not held up', {
    timeout: 240_000,
  }, async () => {
    const { email } = await somebody()
    const other = await somebody()
    const [session, device] = cookiesOf(await signIn(email, PASSWORD, '198.51.100.200'))
    expect([session, device]).toEqual([expect.stringContaining('session_token'), expect.stringContaining('almanac.device-')])
    const guess = (turn: number) => signIn(email, `guess number ${turn}`, `198.51.100.${turn}`)
    const begun = performance.now()
    const together = await Promise.all(Array.from({ length: 20 }, (_, turn) => guess(turn)))
    // Five tries are free, though all came at one moment; later ones only as the delays of 2, 4, 8 … s pass on a slow machine.
    const checked = together.filter(({ status }) => status === 401).length
    const passed = Math.floor(Math.log2((performance.now() - begun) / 2000 + 1))
    expect(checked).toBeGreaterThanOrEqual(5)
    expect(checked).toBeLessThanOrEqual(5 + passed)
    expect(together.filter(({ status }) => status === 429)).toHaveLength(20 - checked)
    await db.query('update sign_in_guard set tries = 5')
    const waits: number[] = []
    for (let turn = 0; turn < 10; turn++) {
      await db.query('update sign_in_guard set blocked_until = now()')
      expect((await guess(20 + turn)).status).toBe(401)
      const { rows } = await db.query(
        'select extract(epoch from blocked_until - last_at)::int as wait from sign_in_guard order by last_at desc limit 1',
      )
      waits.push(rows[0].wait)
    }
    // Doubling from 4 s after the sixth try to a quarter of an hour; by hand.
    expect(waits).toEqual([4, 8, 16, 32, 64, 128, 256, 512, 900, 900])
    const refused = await guess(40)
    expect([refused.status, ((await refused.json()) as { message: string }).message]).toEqual([429, expect.stringContaining('wait 15 min')])
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(800)
    expect((await signIn(email, PASSWORD, '198.51.100.99')).status).toBe(429)
    expect((await signIn(email, PASSWORD, '198.51.100.98', device)).status).toBe(200)
    expect((await signIn(email, PASSWORD, '198.51.100.200')).status).toBe(200)
    expect((await signIn(other.email, PASSWORD, '198.51.100.97', device)).status).toBe(200)
    // Another's cookie opens nothing here.
    expect((await signIn(email, PASSWORD, '198.51.100.96', device?.replace(/=.*/, '=made.up'))).status).toBe(429)
  })

  test('is counted for a known device too, at a count of its own', async () => {
    const { email } = await somebody()
    const device = cookiesOf(await signIn(email, PASSWORD, '192.0.2.50')).at(-1)
    const guess = async (turn: number) => (await signIn(email, 'guess number one', `192.0.2.${60 + turn}`, device)).status
    for (let turn = 0; turn < 5; turn++) expect(await guess(turn)).toBe(401)
    await holdLonger(db)
    expect(await guess(5)).toBe(429)
    expect((await signIn(email, PASSWORD, '192.0.2.70')).status).toBe(200)
  })

  test('is refused to strangers when all together try too often, and to nobody who is known', async () => {
    const { email } = await somebody()
    const device = cookiesOf(await signIn(email, PASSWORD, '192.0.2.80')).at(-1)
    // Within one minute: passwords take their time on a busy machine.
    await secondsLeftOfMinute(25)
    await db.query(`insert into request_window (key, starts_at, count) values ('sign-in of all', date_trunc('minute', now()), 149)
      on conflict (key) do update set starts_at = excluded.starts_at, count = 149`)
    expect((await signIn((await somebody()).email, PASSWORD, '192.0.2.81')).status).toBe(200)
    expect((await signIn((await somebody()).email, PASSWORD, '192.0.2.82')).status).toBe(429)
    expect((await signIn(email, PASSWORD, '192.0.2.83', device)).status).toBe(200)
    await db.query(`delete from request_window where key = 'sign-in of all'`)
  })

  test('leaves no e-mail and no address in what is kept to count by', async () => {
    const { rows } = await db.query<{ line: string }>(
      'select t::text as line from sign_in_guard t union all select t::text from identity_event t',
    )
    expect(rows.length).toBeGreaterThan(5)
    expect(rows.filter(({ line }) => /@|\d+\.\d+\.\d+\.\d+/.test(line))).toEqual([])
  })

  test('is written down: who and when, right and wrong, and how often within a minute', async () => {
    const { email, id } = await somebody()
    for (let turn = 0; turn < 3; turn++) await signIn(email, 'guess number one', `192.0.2.${100 + turn}`)
    const [session] = cookiesOf(await signIn(email, PASSWORD, '192.0.2.110'))
    await post('sign-out', {}, { cookie: session ?? '' })
    const written = await events(id)
    expect(written.filter((one) => one.startsWith('sign-in-failed')).reduce((sum, one) => sum + Number(one.split(' ')[1]), 0)).toBe(3)
    expect(written.slice(-2)).toEqual(['signed-in 1', 'signed-out 1'])
    await signIn(`nobody-${email}`, 'guess number one', '192.0.2.111')
    expect((await events(null)).some((one) => one.startsWith('sign-in-failed'))).toBe(true)
  })
})
