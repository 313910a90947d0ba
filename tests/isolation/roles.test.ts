import { closeClients } from '@almanac/database/client'
import { addMembership, endMembership } from '@almanac/identity/people'
import type { Role } from '@almanac/records/role'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { makeArchivedThings } from '../support/archived-things.ts'
import { NOW } from '../support/records.ts'
import { inspector, makeCompany, makeFirmRecords } from '../support/two-firms.ts'
import { idPaths, isCommand, withValue } from './id-fields.ts'
import type { SampleIds } from './sample-call.ts'
import { inputOf, SAMPLES } from './sample-calls.ts'
import { allProcedures, type Caller, makeCaller, send, signInAs } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

const ROLES: Role[] = ['owner', 'dispatcher', 'technician']
const procedures = allProcedures()
let db: pg.Client
let firm: SampleIds
let callers: Record<Role, Caller>

const found = (name: string) => {
  const one = procedures.find((procedure) => procedure.name === name)
  if (!one) throw new Error(`${name} is gone`)
  return one.procedure
}
/** What any member may ask. */
const withMember = (headers: Headers) => send(found('session.list'), headers, undefined)
/** The ids of the sites that the caller's present company has. */
const sitesOf = async (headers: Headers) => (await send(found('sites.list'), headers, { limit: 50 })).said

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = '100000'
  setClock(() => new Date(NOW))
  const records = await makeFirmRecords(db)
  firm = {
    ...records,
    sessionId: newId(),
    passkeyId: newId(),
    otherPersonId: newId(),
    otherSessionId: newId(),
    invitationId: newId(),
    ...(await makeArchivedThings(db, records.companyId, records.siteId)),
  }
  const made = await Promise.all(ROLES.map((role) => makeCaller(firm.companyId, role)))
  callers = Object.fromEntries(ROLES.map((role, index) => [role, made[index]])) as Record<Role, Caller>
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe.each(procedures)('$name', ({ domain, verb, procedure, input: schema }) => {
  const sample = SAMPLES[domain]?.[verb] ?? { roles: 'o' }

  /** The sample with ids of nothing: whoever may ask is told that it is not there, and nothing changes between the roles. */
  const harmless = () => {
    const input = inputOf(sample, firm, isCommand(schema))
    const paths = idPaths(schema).filter((path) => !sample.also?.[path.join('.')])
    return paths.reduce<unknown>((changed, path) => withValue(changed, path, newId()), input)
  }

  test.each(ROLES)('%s', async (role) => {
    const { headers } = callers[role]
    const answer = await send(procedure, headers, harmless())
    if (sample.roles.includes(role.slice(0, 1))) expect(['ok', 'not-found', 'conflict', 'version-conflict']).toContain(answer.code)
    else expect(answer).toMatchObject({ code: 'forbidden', status: 403 })
  })

  test('without a session', async () => {
    expect(await send(procedure, new Headers(), harmless())).toMatchObject({ code: 'unauthenticated', status: 401 })
  })
})

test('a request that a role may not send is refused before it is read', async () => {
  expect(await send(found('reminders.decide'), callers.technician.headers, { nonsense: true })).toMatchObject({ code: 'forbidden' })
  expect(await send(found('reminders.decide'), callers.owner.headers, { nonsense: true })).toMatchObject({ code: 'invalid', status: 400 })
})

describe('a session', () => {
  test('is refused with its next request once the membership has ended, and goes on when it begins again', async () => {
    const { personId, headers } = await makeCaller(firm.companyId, 'dispatcher')
    expect(await withMember(headers)).toMatchObject({ ok: true })
    await endMembership(personId, firm.companyId)
    expect(await withMember(headers)).toMatchObject({ code: 'forbidden', status: 403 })
    await addMembership(personId, firm.companyId, 'technician')
    expect(await withMember(headers)).toMatchObject({ ok: true })
    // A dispatcher reads the crews, a technician does not.
    expect(await send(found('crews.list'), headers, {})).toMatchObject({ code: 'forbidden' })
  })

  test('ends when it is ended, and the person’s others go on', async () => {
    const caller = await makeCaller(firm.companyId)
    const second = await signInAs(caller.email)
    expect(await send(found('session.end'), caller.headers, { sessionId: second.sessionId })).toMatchObject({ ok: true })
    expect(await withMember(second.headers)).toMatchObject({ code: 'unauthenticated', status: 401 })
    expect(await withMember(caller.headers)).toMatchObject({ ok: true })
    const stranger = await makeCaller(firm.companyId)
    expect(await send(found('session.end'), stranger.headers, { sessionId: caller.sessionId })).toMatchObject({ status: 404 })
    expect(await withMember(caller.headers)).toMatchObject({ ok: true })
  })

  test('goes to another company of the person, and to none that they are not in or have left', async () => {
    const [own, second, strange] = [firm.companyId, await makeCompany(db, 'Weir Water'), await makeCompany(db, 'Strange Water')]
    const { personId, headers } = await makeCaller(own)
    await addMembership(personId, second, 'technician')
    const go = (companyId: string) => send(found('session.switchCompany'), headers, { companyId })
    expect(await go(strange)).toMatchObject({ code: 'not-found', status: 404 })
    expect(await go(strange)).toEqual(await go(newId()))
    expect(await sitesOf(headers)).toContain(firm.siteId)
    expect(await go(second)).toMatchObject({ ok: true })
    expect(await sitesOf(headers)).not.toContain(firm.siteId)
    await endMembership(personId, second)
    expect(await sitesOf(headers)).toContain(firm.siteId)
    expect(await go(second)).toMatchObject({ status: 404 })
  })

  test('does nothing for a page that still shows the company one has left', async () => {
    const [own, second] = [firm.companyId, await makeCompany(db, 'Weir Water')]
    const { personId, headers } = await makeCaller(own)
    await addMembership(personId, second, 'owner')
    const page = new Headers(headers)
    page.set('x-almanac-company', own)
    const name = `Supply ${newId()}`
    const add = () => send(found('water.addSupply'), page, { commandId: newId(), name, kind: 'town' })
    const supplies = () => db.query<{ company_id: string }>('select company_id from water_supply where name = $1', [name])
    expect(await send(found('session.switchCompany'), headers, { companyId: second })).toMatchObject({ ok: true })
    expect(await add()).toMatchObject({ code: 'conflict', status: 409 })
    expect((await supplies()).rows).toEqual([])
    expect(await send(found('session.switchCompany'), headers, { companyId: own })).toMatchObject({ ok: true })
    expect(await add()).toMatchObject({ ok: true })
    expect((await supplies()).rows).toEqual([{ company_id: own }])
  })

  test('does nothing for a page that still shows whoever was signed in before', async () => {
    const [before, { headers }] = [await makeCaller(firm.companyId), await makeCaller(firm.companyId)]
    const page = new Headers(headers)
    page.set('x-almanac-person', before.personId)
    const name = `Supply ${newId()}`
    const add = () => send(found('water.addSupply'), page, { commandId: newId(), name, kind: 'town' })
    expect(await add()).toMatchObject({ code: 'conflict', status: 409 })
    expect((await db.query('select id from water_supply where name = $1', [name])).rows).toEqual([])
    page.delete('x-almanac-person')
    expect(await add()).toMatchObject({ ok: true })
  })

  test('made up is none', async () => {
    const { headers } = await makeCaller(firm.companyId)
    const cookie = headers.get('cookie') ?? ''
    expect(await withMember(new Headers({ cookie: cookie.replace(/=(.)/, (_, first) => `=${first === 'x' ? 'y' : 'x'}`) }))).toMatchObject({
      status: 401,
    })
  })
})

test('more requests in a minute than allowed are refused, for that person only', async () => {
  const [busy, calm] = [await makeCaller(firm.companyId), await makeCaller(firm.companyId)]
  process.env.REQUESTS_PER_MINUTE = '3'
  forgetConfig()
  try {
    // Two windows at most when the minute turns meanwhile, so seven cannot all pass.
    const answers = []
    for (let turn = 0; turn < 7; turn++) answers.push(await withMember(busy.headers))
    expect(answers.slice(0, 3).every((one) => one.ok)).toBe(true)
    expect(answers.find((one) => !one.ok)).toMatchObject({ code: 'rate-limited', status: 429 })
    expect(await withMember(calm.headers)).toMatchObject({ ok: true })
  } finally {
    process.env.REQUESTS_PER_MINUTE = '100000'
    forgetConfig()
  }
})
