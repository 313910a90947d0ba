import { closeClients, identityClient } from '@almanac/database/client'
import type { Role } from '@almanac/records/role'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cookiesOf, PASSWORD, signIn, somebody } from '../../tests/support/own-sign-in.ts'
import { inspector, makeCompany } from '../../tests/support/two-firms.ts'
import { auth } from './auth.ts'
import { acceptInvitation, invite, listInvitations, withdrawInvitation } from './invitations.ts'
import { changeRole, endAccess, endMemberSession, listMembers, makePasswordLink } from './members.ts'
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

const somewhere = () => `192.0.2.${++place}`
/** An owner in a company of their own, as the door hands them on. */
async function owner(role: Role = 'owner'): Promise<Who> {
  const { id, email } = await somebody()
  const companyId = await makeCompany(db, 'Weir Road Water')
  await addMembership(id, companyId, role)
  const company = { id: companyId, name: 'Weir Road Water' } as Who['company']
  return { sessionId: newId(), person: { id, name: 'Ada Roe', email, language: null, secondStep: false }, company, role, companies: [] }
}
/** One more person in an owner's company. */
async function colleague(who: Who, role: Role) {
  const person = await somebody()
  await addMembership(person.id, who.company.id, role)
  return person
}
const rolesIn = async (who: Who) => (await listMembers(who.company.id)).map((one) => one.role).sort()
const events = async (who: Who) =>
  (await identityClient().identityEvent.findMany({ where: { companyId: who.company.id }, orderBy: { at: 'asc' } })).map(
    ({ kind, personId, byPersonId, word }) => ({ kind, personId, byPersonId, word }),
  )

describe('the last owner', () => {
  const asRoot = (sql: string, who: Who) => db.query(sql, [who.company.id])

  test('does not leave and is not demoted, by the app nor by SQL', async () => {
    const who = await owner()
    await colleague(who, 'dispatcher')
    await expect(endAccess(who, who.person.id)).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('last one') })
    await expect(changeRole(who, who.person.id, 'dispatcher', 'owner')).rejects.toMatchObject({ code: 'conflict' })
    await expect(asRoot(`update membership set role = 'technician' where company_id = $1`, who)).rejects.toThrow('keeps an owner')
    await expect(asRoot('update membership set ended_at = now() where company_id = $1', who)).rejects.toThrow('keeps an owner')
    await expect(asRoot('delete from membership where company_id = $1', who)).rejects.toThrow('keeps an owner')
    expect(await rolesIn(who)).toEqual(['dispatcher', 'owner'])
    expect(await events(who)).toEqual([])
  })

  test('of two is free to go, and of two who demote each other at one moment one stays', async () => {
    for (let round = 0; round < 5; round++) {
      const who = await owner()
      const second = await colleague(who, 'owner')
      const both = await Promise.allSettled([
        changeRole(who, second.id, 'technician', 'owner'),
        changeRole(who, who.person.id, 'technician', 'owner'),
      ])
      expect(both.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected'])
      expect(await rolesIn(who)).toEqual(['owner', 'technician'])
    }
  })
})

describe('a role', () => {
  test('is changed, and written down with who did it', async () => {
    const who = await owner()
    const { id } = await colleague(who, 'technician')
    await changeRole(who, id, 'dispatcher', 'technician')
    expect(await rolesIn(who)).toEqual(['dispatcher', 'owner'])
    expect(await events(who)).toEqual([{ kind: 'role-changed', personId: id, byPersonId: who.person.id, word: 'technician to dispatcher' }])
  })
  test('that somebody else changed meanwhile is not written over', async () => {
    const who = await owner()
    const { id } = await colleague(who, 'technician')
    await changeRole(who, id, 'owner', 'technician')
    await expect(changeRole(who, id, 'dispatcher', 'technician')).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('owner'),
    })
    expect(await rolesIn(who)).toEqual(['owner', 'owner'])
  })
  test('of another company is not this owner’s to change', async () => {
    const [who, other] = [await owner(), await owner()]
    await expect(changeRole(who, other.person.id, 'technician', 'owner')).rejects.toMatchObject({ code: 'not-found' })
    await expect(endAccess(who, other.person.id)).rejects.toMatchObject({ code: 'not-found' })
    await expect(makePasswordLink(who, other.person.id)).rejects.toMatchObject({ code: 'not-found' })
  })
})

describe('an invitation', () => {
  const given = { name: 'Otis Brand', email: null, role: 'technician' as const, colleagueId: null }
  const fresh = () => ({ name: 'Otis Brand', email: `${newId()}@firm.example`, password: PASSWORD })
  const read = (token: string) => readLink('invitation', token, somewhere())

  test('lets someone new in, in its role, once', async () => {
    const who = await owner()
    const { token } = await invite(who, given)
    expect(await listInvitations(who.company.id)).toMatchObject([{ name: 'Otis Brand', role: 'technician' }])
    const otis = fresh()
    const id = await acceptInvitation(await read(token), otis)
    await expect(auth().api.signInEmail({ body: { email: otis.email, password: PASSWORD } })).resolves.toMatchObject({ user: { id } })
    expect(await rolesIn(who)).toEqual(['owner', 'technician'])
    expect(await listInvitations(who.company.id)).toEqual([])
    await expect(read(token)).rejects.toMatchObject({ code: 'not-found' })
    expect((await events(who)).map((one) => one.kind)).toEqual(['invited', 'joined'])
  })
  test('opened by two at one moment lets one in', async () => {
    const who = await owner()
    const link = await read((await invite(who, given)).token)
    const both = await Promise.allSettled([acceptInvitation(link, fresh()), acceptInvitation(link, fresh())])
    expect(both.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await rolesIn(who)).toEqual(['owner', 'technician'])
  })
  test('brings someone who signs in here already into one company more, by their own sign-in alone', async () => {
    const [who, other] = [await owner(), await owner()]
    const { token } = await invite(who, given)
    const known = { name: 'Somebody', email: other.person.email, password: PASSWORD }
    await expect(acceptInvitation(await read(token), known)).rejects.toMatchObject({ code: 'conflict' })
    await acceptInvitation(await read(token), { personId: other.person.id })
    expect(await identityClient().membership.count({ where: { personId: other.person.id, endedAt: null } })).toBe(2)
  })
  test('raises and lowers nobody who is in the company already, and is not used up by them', async () => {
    const who = await owner()
    const { id } = await colleague(who, 'technician')
    const { token } = await invite(who, { ...given, role: 'owner' })
    await expect(acceptInvitation(await read(token), { personId: id })).rejects.toMatchObject({ code: 'conflict' })
    expect(await rolesIn(who)).toEqual(['owner', 'technician'])
    expect(await read(token)).toMatchObject({ role: 'owner' })
  })
  test('that was taken back, is too old or was followed by another to the same email lets nobody in', async () => {
    const who = await owner()
    const email = fresh().email
    const first = await invite(who, { ...given, email })
    const second = await invite(who, { ...given, email })
    await expect(read(first.token)).rejects.toMatchObject({ code: 'not-found' })
    const open = await read(second.token)
    const [{ id } = { id: '' }] = await listInvitations(who.company.id)
    await expect(withdrawInvitation(await owner(), id)).rejects.toMatchObject({ code: 'not-found' })
    await withdrawInvitation(who, id)
    await expect(acceptInvitation(open, { ...fresh(), email })).rejects.toMatchObject({ code: 'not-found' })
    const third = await invite(who, given)
    await db.query(`update one_time_link set expires_at = now() - interval '1 second' where company_id = $1`, [who.company.id])
    await expect(read(third.token)).rejects.toMatchObject({ code: 'not-found' })
    expect(await rolesIn(who)).toEqual(['owner'])
    expect(await identityClient().person.count({ where: { email } })).toBe(0)
  })
})

describe('an owner', () => {
  test('sees and ends the sessions of the company’s people, and of nobody else', async () => {
    const [who, other] = [await owner(), await owner()]
    const tomas = await colleague(who, 'technician')
    await signIn(tomas.email, PASSWORD, somewhere())
    const cookie = cookiesOf(await signIn(tomas.email, PASSWORD, somewhere()))[0] ?? ''
    const sessions = async () => (await listMembers(who.company.id)).find((one) => one.personId === tomas.id)?.sessions ?? []
    const [latest, ...rest] = await sessions()
    expect(rest).toHaveLength(1)
    await expect(endMemberSession(other, latest?.id ?? '')).rejects.toMatchObject({ code: 'not-found' })
    await endMemberSession(who, latest?.id ?? '')
    expect(await auth().api.getSession({ headers: new Headers({ cookie }) })).toBeNull()
    expect(await sessions()).toEqual(rest)
    expect(await events(who)).toMatchObject([{ kind: 'session-ended', personId: tomas.id, byPersonId: who.person.id }])
  })

  test('makes a link for a forgotten password that ends all sessions, works once, and ends with the access', async () => {
    const who = await owner()
    const tomas = await colleague(who, 'technician')
    const cookie = cookiesOf(await signIn(tomas.email, PASSWORD, somewhere()))[0] ?? ''
    const read = (token: string) => readLink('password', token, somewhere())
    const earlier = await makePasswordLink(who, tomas.id)
    const { token } = await makePasswordLink(who, tomas.id)
    await expect(read(earlier.token)).rejects.toMatchObject({ code: 'not-found' })
    await expect(setPasswordByLink(await read(token), 'password123')).rejects.toMatchObject({ code: 'invalid' })
    await setPasswordByLink(await read(token), 'gravel under quiet resin')
    expect(await auth().api.getSession({ headers: new Headers({ cookie }) })).toBeNull()
    expect((await signIn(tomas.email, PASSWORD, somewhere())).status).toBe(401)
    expect((await signIn(tomas.email, 'gravel under quiet resin', somewhere())).status).toBe(200)
    await expect(read(token)).rejects.toMatchObject({ code: 'not-found' })
    const last = await makePasswordLink(who, tomas.id)
    await endAccess(who, tomas.id)
    await expect(read(last.token)).rejects.toMatchObject({ code: 'not-found' })
  })

  test('does not get into another company by the password of someone who works for both', async () => {
    const [who, other] = [await owner(), await owner()]
    const tomas = await colleague(who, 'technician')
    const link = await readLink('password', (await makePasswordLink(who, tomas.id)).token, somewhere())
    await addMembership(tomas.id, other.company.id, 'owner')
    await expect(makePasswordLink(who, tomas.id)).rejects.toMatchObject({ code: 'conflict' })
    await expect(setPasswordByLink(link, 'gravel under quiet resin')).rejects.toMatchObject({ code: 'not-found' })
  })
})
