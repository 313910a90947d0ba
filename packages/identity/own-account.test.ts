import { closeClients, identityClient } from '@almanac/database/client'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cookiesOf, events, holdLonger, PASSWORD, post, signIn, somebody } from '../../tests/support/own-sign-in.ts'
import { inspector, makeCompany } from '../../tests/support/two-firms.ts'
import { auth } from './auth.ts'
import { hashInTurn } from './password-queue.ts'
import { addMembership } from './people.ts'
import { switchCompany } from './switch-company.ts'
import { readWho } from './who.ts'

let db: pg.Client

beforeAll(async () => {
  db = await inspector()
  process.env.SIGN_IN_TRIES_PER_MINUTE = '5'
})
afterAll(async () => {
  await closeClients()
  await db.end()
})

describe('what people change of themselves', () => {
  const signedIn = async () => {
    const person = await somebody()
    const cookie =
      cookiesOf(await signIn(person.email, PASSWORD, `10.0.${Math.floor(Math.random() * 256)}.${Math.floor(Math.random() * 256)}`))[0] ?? ''
    return { ...person, cookie }
  }
  const change = (cookie: string, newPassword: string, currentPassword = PASSWORD) =>
    post('change-password', { newPassword, currentPassword, revokeOtherSessions: false }, { cookie })

  // Each of these is in a published list of common passwords or follows a pattern that such lists name: a row of keys, a repeat, a sequence, the own name.
  test.each(['1234567890', 'aaaaaaaaaa', 'password123', 'qwertyuiop', 'abcabcabcabc', 'iloveyou123', 'AdaRoeAdaRoe', 'short'])(
    'a password is not %s',
    async (weak) => {
      const { cookie, email } = await signedIn()
      const answer = await change(cookie, weak)
      expect([answer.status, ((await answer.json()) as { message: string }).message]).toEqual([
        400,
        expect.stringContaining('The old one still works'),
      ])
      expect((await signIn(email, PASSWORD, `10.1.0.${weak.length}-${weak}`)).status).toBe(200)
    },
  )

  test('a new password ends every other session, and is written down', async () => {
    const { cookie, email, id } = await signedIn()
    const other = cookiesOf(await signIn(email, PASSWORD, '10.2.0.1'))[0] ?? ''
    const before = await identityClient().session.findMany({ where: { userId: id } })
    const answer = await change(cookie, 'gravel under quiet resin')
    expect(answer.status).toBe(200)
    const left = await identityClient().session.findMany({ where: { userId: id } })
    expect(left).toHaveLength(1)
    expect(before.map((one) => one.id)).not.toContain(left[0]?.id)
    const ask = (cookies: string) => auth().api.getSession({ headers: new Headers({ cookie: cookies }) })
    expect(await ask(other)).toBeNull()
    expect(await ask(cookiesOf(answer)[0] ?? '')).toMatchObject({ user: { id } })
    expect(await events(id)).toContain('password-changed 1')
  })

  test('a new password leaves the person in the company they were in', async () => {
    const { cookie, id } = await signedIn()
    const [first, second] = [await makeCompany(db), await makeCompany(db)]
    for (const one of [first, second]) await addMembership(id, one, 'owner')
    const who = (cookies: string) => readWho(new Headers({ cookie: cookies }))
    await switchCompany(await who(cookie), second)
    const answer = await change(cookie, 'gravel under quiet resin')
    expect(answer.status).toBe(200)
    expect((await who(cookiesOf(answer)[0] ?? '')).company.id).toBe(second)
  })

  test('the present password is not guessed at through a session that lies open', async () => {
    const { cookie } = await signedIn()
    const guess = async (turn: number) => (await change(cookie, 'gravel under quiet resin', `guess number ${turn}`)).status
    for (let turn = 0; turn < 5; turn++) expect(await guess(turn)).toBe(400)
    await holdLonger(db)
    expect(await guess(5)).toBe(429)
  })

  test('a name is one short line, and its change is written down; nothing else changes', async () => {
    const { cookie, id } = await signedIn()
    const rename = (body: object) => post('update-user', body, { cookie })
    for (const body of [
      { name: 'x'.repeat(81) },
      { name: ' ' },
      { name: 'a\u0000b' },
      { name: '<b>Ada</b>' },
      { name: '\ud800' },
      { image: 'http://x' },
      { name: 'Ada Orr', image: 'http://elsewhere.example/x.png' },
      {},
    ])
      expect((await rename(body)).status).toBe(400)
    expect((await rename({ name: ' Ada Orr ' })).status).toBe(200)
    expect(await identityClient().person.findUnique({ where: { id } })).toMatchObject({ name: 'Ada Orr', image: null })
    expect(await events(id)).toContain('name-changed 1')
  })
})

describe('passwords are hashed in turn', () => {
  test('few at one time, and the line is bounded', async () => {
    const begun = Array.from({ length: 40 }, () => hashInTurn(PASSWORD))
    const ended = await Promise.allSettled(begun)
    const refused = ended.filter((one) => one.status === 'rejected')
    expect(refused.length).toBeGreaterThanOrEqual(18)
    expect(refused.every((one) => (one.reason as { statusCode: number }).statusCode === 503)).toBe(true)
    expect(await hashInTurn(PASSWORD)).toContain(':')
  })
})
