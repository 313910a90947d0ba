import { closeClients, identityClient } from '@almanac/database/client'
import type { Permission } from '@almanac/records/permission'
import type { Role } from '@almanac/records/role'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inspector, makeCompany } from '../../tests/support/two-firms.ts'
import { auth } from './auth.ts'
import { addMembership, addPerson, endMembership } from './people.ts'
import { may, permissionsOf } from './permissions.ts'
import { stillIn } from './who.ts'

const PASSWORD = 'brine tanks bridge in summer'
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

describe('permissions', () => {
  // Who does what in the house: the office plans and records, the crew works and closes out, the owner decides what leaves the house.
  test.each<[Permission, Role[]]>([
    ['close:visit', ['owner', 'dispatcher', 'technician']],
    ['read:site', ['owner', 'dispatcher', 'technician']],
    ['change:site', ['owner', 'dispatcher']],
    ['book:visit', ['owner', 'dispatcher']],
    ['read:due', ['owner', 'dispatcher']],
    ['run:import', ['owner']],
    ['decide:reminder', ['owner']],
    ['manage:company', ['owner']],
  ])('%s: %j', (permission, roles) => {
    expect((['owner', 'dispatcher', 'technician'] as const).filter((role) => may(role, permission))).toEqual(roles)
  })
  test('a dispatcher may all that a technician may, an owner all that a dispatcher may', () => {
    expect(permissionsOf('dispatcher')).toEqual(expect.arrayContaining(permissionsOf('technician')))
    expect(permissionsOf('owner')).toEqual(expect.arrayContaining(permissionsOf('dispatcher')))
  })
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
    expect(await stillIn(session.id, id, companyId)).toBe(true)
    expect(await stillIn(session.id, id, newId())).toBe(false)
    await endMembership(id, companyId)
    expect(await stillIn(session.id, id, companyId)).toBe(false)
    await addMembership(id, companyId, 'owner')
    await identityClient().session.update({ where: { id: session.id }, data: { expiresAt: new Date('2020-01-01') } })
    expect(await stillIn(session.id, id, companyId)).toBe(false)
  })

  test('do not sign themselves up', async () => {
    const body = { name: 'Nobody', email: email(), password: PASSWORD }
    await expect(auth().api.signUpEmail({ body })).rejects.toThrow()
    expect(await identityClient().person.count({ where: { email: body.email } })).toBe(0)
  })
})

describe('signing in over HTTP', () => {
  const post = (body: object, headers: Record<string, string> = {}) =>
    auth().handler(
      new Request('http://localhost:3000/api/auth/sign-in/email', {
        method: 'POST',
        headers: { 'content-type': 'application/json', origin: 'http://localhost:3000', 'x-forwarded-for': '203.0.113.9', ...headers },
        body: JSON.stringify(body),
      }),
    )

  test('sets a cookie that scripts cannot read and other sites do not send', async () => {
    const email = `${newId()}@firm.example`
    await addPerson({ name: 'Ada Roe', email, password: PASSWORD })
    const answer = await post({ email, password: PASSWORD })
    expect(answer.status).toBe(200)
    expect(answer.headers.get('set-cookie')).toMatch(/almanac\.session_token=.*HttpOnly.*SameSite=Lax/i)
    const foreign = await post({ email, password: PASSWORD }, { origin: 'https://elsewhere.example', cookie: 'almanac.session_token=x' })
    expect(foreign.status).toBe(403)
  })

  test('is refused after too many tries in a minute, right password or not', async () => {
    const email = `${newId()}@firm.example`
    await addPerson({ name: 'Ada Roe', email, password: PASSWORD })
    const from = { 'x-forwarded-for': '203.0.113.77' }
    const statuses = []
    for (let turn = 0; turn < 6; turn++) statuses.push((await post({ email, password: 'guess number one' }, from)).status)
    expect(statuses.slice(0, 5)).toEqual(Array(5).fill(401))
    expect(statuses[5]).toBe(429)
    expect((await post({ email, password: PASSWORD }, from)).status).toBe(429)
    expect((await post({ email, password: PASSWORD }, { 'x-forwarded-for': '203.0.113.78' })).status).toBe(200)
  })
})
