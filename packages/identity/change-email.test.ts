import { closeClients, identityClient } from '@almanac/database/client'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { events, holdLonger, PASSWORD, signIn, somebody } from '../../tests/support/own-sign-in.ts'
import { inspector } from '../../tests/support/two-firms.ts'
import { askNewEmail, setEmailByLink } from './change-email.ts'
import { readLink } from './one-time-link.ts'
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

const somewhere = () => `203.0.113.${++place}`
const fresh = () => `${newId()}@firm.example`
async function asker() {
  const { id, email } = await somebody()
  return { id, email, who: { person: { id, email } } as Who }
}

test('without mail a new email counts at once, after the password', async () => {
  const { id, email: before, who } = await asker()
  const email = fresh()
  await expect(askNewEmail(who, { email, password: 'not the password' }, false)).rejects.toMatchObject({ code: 'invalid' })
  expect(await askNewEmail(who, { email, password: PASSWORD }, false)).toBeNull()
  expect((await signIn(email, PASSWORD, somewhere())).status).toBe(200)
  expect((await signIn(before, PASSWORD, somewhere())).status).toBe(401)
  expect(await identityClient().person.findUnique({ where: { id } })).toMatchObject({ email, emailVerified: false })
  expect(await events(id)).toContain('email-changed 1')
})

test('with mail it counts once the link that went there is opened, which works once, and a later one ends it', async () => {
  const { email: before, who } = await asker()
  const [first, email] = [fresh(), fresh()]
  const read = (token: string | undefined) => readLink('email', token ?? '', somewhere())
  const earlier = await askNewEmail(who, { email: first, password: PASSWORD }, true)
  const asked = await askNewEmail(who, { email, password: PASSWORD }, true)
  await expect(read(earlier?.token)).rejects.toMatchObject({ code: 'not-found' })
  expect((await signIn(before, PASSWORD, somewhere())).status).toBe(200)
  const link = await read(asked?.token)
  expect(await setEmailByLink(link)).toBe(before)
  expect((await signIn(email, PASSWORD, somewhere())).status).toBe(200)
  await expect(setEmailByLink(link)).rejects.toMatchObject({ code: 'not-found' })
})

test('somebody else’s is not taken, not even when they came to it after the link was sent', async () => {
  const [mine, other] = [await asker(), await asker()]
  for (const byMail of [true, false])
    await expect(askNewEmail(mine.who, { email: other.email, password: PASSWORD }, byMail)).rejects.toMatchObject({ code: 'conflict' })
  const email = fresh()
  const asked = await askNewEmail(mine.who, { email, password: PASSWORD }, true)
  await askNewEmail(other.who, { email, password: PASSWORD }, false)
  const link = await readLink('email', asked?.token ?? '', somewhere())
  await expect(setEmailByLink(link)).rejects.toMatchObject({ code: 'conflict' })
  expect(await identityClient().person.findUnique({ where: { id: mine.id } })).toMatchObject({ email: mine.email })
})

test('the password is not guessed at on the way', async () => {
  const { who } = await asker()
  const guess = (password: string) => askNewEmail(who, { email: fresh(), password }, false).catch((error: { code: string }) => error.code)
  for (let turn = 0; turn < 5; turn++) expect(await guess(`guess number ${turn}`)).toBe('invalid')
  await holdLonger(db)
  expect(await guess(PASSWORD)).toBe('rate-limited')
})
