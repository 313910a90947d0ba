import { closeClients, identityClient } from '@almanac/database/client'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PASSWORD } from '../../tests/support/own-sign-in.ts'
import { inspector } from '../../tests/support/two-firms.ts'
import { auth } from './auth.ts'
import { makeLink, readLink } from './one-time-link.ts'
import { foundCompany, makeSetUpLink } from './set-up.ts'

let db: pg.Client

beforeAll(async () => {
  db = await inspector()
  process.env.SIGN_IN_TRIES_PER_MINUTE = '5'
})
afterAll(async () => {
  await closeClients()
  await db.end()
})

const company = {
  ...{ name: 'Weir Road Water', telephone: '(630) 555-0142', locale: 'en-US', unitSystem: 'us' as const, timeZone: 'America/Chicago' },
  ...{ currency: 'USD', paper: 'letter' as const, dayStartMinute: 450, dayEndMinute: 990 },
}
const owner = () => ({ name: 'Ines Roth', email: `${newId()}@firm.example`, password: PASSWORD })
let place = 0
/** Each test from an address of its own. */
const somewhere = () => `192.0.2.${++place}`
const read = (token: string, from = somewhere()) => readLink('set-up', token, from)
const fresh = async () => read((await makeLink({ purpose: 'set-up' })).token)
const count = async (sql: string, of: string) => Number((await db.query(`select count(*) from ${sql} = $1`, [of])).rows[0].count)

test('a start offers a link while no company is, which ends that of the start before, and none from then on', async () => {
  const tokenOf = (made: { url: string } | null) => /^http:\/\/localhost:3000\/set-up\/([\w-]{43})$/.exec(made?.url ?? '')?.[1] ?? ''
  const first = tokenOf(await makeSetUpLink({ onlyWhenEmpty: true }))
  const second = tokenOf(await makeSetUpLink({ onlyWhenEmpty: true }))
  await expect(read(first)).rejects.toMatchObject({ code: 'not-found' })
  await foundCompany(await read(second), company, owner())
  expect(await makeSetUpLink({ onlyWhenEmpty: true })).toBeNull()
  // The host's own goes on.
  expect(await read(tokenOf(await makeSetUpLink()))).toMatchObject({ purpose: 'set-up' })
})

describe('a set-up link', () => {
  test('founds a company with its hours, its settings and an owner who can sign in, and is dead then', async () => {
    const { token } = await makeLink({ purpose: 'set-up' })
    const ines = owner()
    const { companyId, personId } = await foundCompany(await read(token), company, ines)
    const { rows } = await db.query(
      `select c.name, c.telephone, c.time_zone, c.paper, s.day_start_minute, s.day_end_minute, m.role from company c
       join company_settings s on s.company_id = c.id join membership m on m.company_id = c.id where c.id = $1`,
      [companyId],
    )
    expect(rows).toEqual([
      {
        ...{ name: 'Weir Road Water', telephone: '(630) 555-0142', time_zone: 'America/Chicago', paper: 'letter' },
        ...{ day_start_minute: 450, day_end_minute: 990, role: 'owner' },
      },
    ])
    await expect(auth().api.signInEmail({ body: { email: ines.email, password: PASSWORD } })).resolves.toMatchObject({
      user: { id: personId },
    })
    expect(await count('audit_entry where company_id', companyId)).toBe(1)
    await expect(read(token)).rejects.toMatchObject({ code: 'not-found' })
  })

  test('used by two at one moment founds one company, and leaves no person without one', async () => {
    const link = await fresh()
    const people = [owner(), owner()]
    const done = await Promise.allSettled(people.map((one) => foundCompany(link, { ...company, name: link.id }, one)))
    expect(done.filter((one) => one.status === 'fulfilled')).toHaveLength(1)
    expect(done.filter((one) => one.status === 'rejected').map((one) => (one.reason as { code: string }).code)).toEqual(['not-found'])
    expect(await count('company where name', link.id)).toBe(1)
    expect(await identityClient().person.count({ where: { email: { in: people.map((one) => one.email) } } })).toBe(1)
  })

  test('that is too old, or was ended, founds nothing, even where its page was open before', async () => {
    for (const change of [`expires_at = now() - interval '1 second'`, 'ended_at = now()']) {
      const { token, id } = await makeLink({ purpose: 'set-up' })
      const link = await read(token)
      await db.query(`update one_time_link set ${change} where id = $1`, [id])
      await expect(read(token)).rejects.toMatchObject({ code: 'not-found' })
      const ines = owner()
      await expect(foundCompany(link, company, ines)).rejects.toMatchObject({ code: 'not-found' })
      expect(await identityClient().person.count({ where: { email: ines.email } })).toBe(0)
    }
  })

  test('of another purpose founds nothing', async () => {
    const { id } = await identityClient().person.create({ data: { id: newId(), name: 'Ada', email: owner().email } })
    const { token } = await makeLink({ purpose: 'password', personId: id })
    await expect(read(token)).rejects.toMatchObject({ code: 'not-found' })
    const link = { ...(await readLink('password', token, somewhere())) }
    await expect(foundCompany(link, company, owner())).rejects.toMatchObject({ code: 'not-found' })
  })

  test('keeps its token nowhere', async () => {
    const { token, id } = await makeLink({ purpose: 'set-up' })
    const { rows } = await db.query('select t::text as line from one_time_link t where id = $1', [id])
    expect(rows[0].line).not.toContain(token)
    // 256 bits: 43 signs of base64url.
    expect(token).toMatch(/^[\w-]{43}$/)
  })

  test('is not guessed at: after the tries of a minute even the right one waits, from there and from nowhere else', async () => {
    const { token } = await makeLink({ purpose: 'set-up' })
    const from = somewhere()
    const guess = (turn: number) => read(String(turn).padStart(43, 'a'), from).catch((error: { code: string }) => error.code)
    const together = await Promise.all(Array.from({ length: 30 }, (_, turn) => guess(turn)))
    // Five in a minute; a slow machine may see two.
    expect(together.filter((code) => code === 'not-found').length).toBeLessThanOrEqual(10)
    expect(together).toContain('rate-limited')
    await expect(read(token, from)).rejects.toMatchObject({ code: 'rate-limited' })
    expect(await read(token)).toMatchObject({ purpose: 'set-up' })
  })

  test('that is right is not held up, however often its page is loaded', async () => {
    const { token } = await makeLink({ purpose: 'set-up' })
    const from = somewhere()
    for (let turn = 0; turn < 12; turn++) expect(await read(token, from)).toMatchObject({ purpose: 'set-up' })
  })

  test('that was sent by mail founds for that address alone, which is then known to be read', async () => {
    const ines = owner()
    const { token } = await makeLink({ purpose: 'set-up', email: ines.email })
    const link = await read(token)
    await expect(foundCompany(link, company, owner())).rejects.toMatchObject({ code: 'invalid' })
    const { personId } = await foundCompany(link, company, ines)
    expect(await identityClient().person.findUnique({ where: { id: personId } })).toMatchObject({ emailVerified: true })
  })

  test('refuses an email that signs in here already, and a weak password, and works afterwards', async () => {
    const [known, ines] = [owner(), owner()]
    const first = await foundCompany(await fresh(), company, known)
    const link = await fresh()
    await expect(foundCompany(link, company, { ...known, name: 'Another' })).rejects.toMatchObject({ code: 'conflict' })
    await expect(foundCompany(link, company, { ...ines, password: 'password123' })).rejects.toMatchObject({ code: 'invalid' })
    const second = await foundCompany(link, company, { personId: first.personId })
    expect(await identityClient().membership.count({ where: { personId: second.personId } })).toBe(2)
  })
})

test('sign-in’s login founds no company without a link', async () => {
  const insert = identityClient().company.create({
    data: { id: newId(), name: 'X', timeZone: 'UTC', unitSystem: 'us', currency: 'USD' },
  })
  await expect(insert).rejects.toThrow(/permission denied|row-level security|42501/)
})
