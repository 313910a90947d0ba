import { closeClients } from '@almanac/database/client'
import { TABLES } from '@almanac/database/tables'
import { addMembership } from '@almanac/identity/people'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { makeArchivedThings } from '../support/archived-things.ts'
import { NOW } from '../support/records.ts'
import { fingerprint, inspector, makeFirmRecords } from '../support/two-firms.ts'
import { makePasskey, makeWaysIn } from '../support/ways-in.ts'
import { idPaths, isCommand, valueAt, withValue } from './id-fields.ts'
import type { SampleIds } from './sample-call.ts'
import { inputOf, SAMPLES } from './sample-calls.ts'
import { setUpFor } from './sample-env.ts'
import { allProcedures, type Caller, makeCaller, send } from './signed-in-call.ts'

// The package that keeps server code out of the browser is empty on a server.
vi.mock('server-only', () => ({}))

const procedures = allProcedures()
let db: pg.Client
let caller: Caller
let theirs: SampleIds

/** Records of a firm that nothing was done to yet, with the caller as its owner and in it. */
async function freshFirm(): Promise<SampleIds> {
  const firm = await makeFirmRecords(db, caller.personId)
  await addMembership(caller.personId, firm.companyId, 'owner')
  await db.query('update session set active_company_id = $1 where id = $2', [firm.companyId, caller.sessionId])
  const sessionId = newId()
  const session = 'insert into session (id, token, user_id, expires_at, updated_at) values ($1, $2, $3, $4, now())'
  await db.query(session, [sessionId, sessionId, caller.personId, '2030-01-01'])
  const passkeyId = await makePasskey(db, caller.personId)
  return {
    ...firm,
    sessionId,
    passkeyId,
    ...(await makeWaysIn(db, firm.companyId)),
    ...(await makeArchivedThings(db, firm.companyId, firm.siteId)),
  }
}

const stateWith = (mine: SampleIds) => fingerprint(db, TABLES.tenant, [mine.companyId, theirs.companyId])

/** A state without the answers stored for one firm's commands: a command that answers record by record is stored even where it refuses one. */
function withoutAnswers(all: Record<string, string>, companyId: string) {
  const { [`applied_command ${companyId}`]: _answers, ...rest } = all
  return rest
}

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = '100000'
  setClock(() => new Date(NOW))
  caller = await makeCaller()
  const other = await makeCaller()
  const records = await makeFirmRecords(db, other.personId)
  theirs = {
    ...records,
    sessionId: other.sessionId,
    passkeyId: await makePasskey(db, other.personId),
    ...(await makeWaysIn(db, records.companyId)),
    ...(await makeArchivedThings(db, records.companyId, records.siteId)),
  }
  await addMembership(other.personId, theirs.companyId, 'owner')
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('every procedure has a sample, and every sample a procedure or a promise in the contract', () => {
  const sampled = Object.entries(SAMPLES).flatMap(([domain, verbs]) => Object.keys(verbs).map((verb) => `${domain}.${verb}`))
  expect(procedures.map((one) => one.name).filter((name) => !sampled.includes(name))).toEqual([])
  const domains = new Set(procedures.map((one) => one.domain))
  expect(sampled.filter((name) => domains.has(name.split('.')[0] ?? '') && !procedures.some((one) => one.name === name))).toEqual([])
  expect(procedures.length).toBeGreaterThan(50)
})

describe.each(procedures)('$name', ({ domain, verb, procedure, input: schema }) => {
  const sample = SAMPLES[domain]?.[verb] ?? { roles: 'o' }
  const paths = idPaths(schema)
  const command = isCommand(schema)

  test.each(paths.map((path) => [path.join('.'), path] as const))(
    '%s of another firm is answered like one that does not exist',
    async (_, path) => {
      const mine = await freshFirm()
      const holding = { ...sample, input: sample.also?.[path.join('.')] ?? sample.input }
      const own = valueAt(inputOf(holding, mine, command), path)
      const name = (Object.keys(mine) as (keyof SampleIds)[]).find((key) => mine[key] === own)
      if (!name) throw new Error(`the sample has no id of its firm at ${path.join('.')}`)
      const foreign = theirs[name]
      const before = await stateWith(mine)
      const attempt = async (id: string) =>
        setUpFor(sample, () => send(procedure, caller.headers, withValue(inputOf(holding, mine, command), path, id), [id]))
      const none = await attempt(newId())
      const swapped = await attempt(foreign)
      expect(swapped).toEqual(none)
      const after = await stateWith(mine)
      if (none.ok) expect(withoutAnswers(after, mine.companyId)).toEqual(withoutAnswers(before, mine.companyId))
      else {
        expect(none).toMatchObject({ code: 'not-found', status: 404 })
        expect(after).toEqual(before)
      }
    },
  )

  test('is answered with one’s own records, and as a command once', async () => {
    const mine = await freshFirm()
    const input = inputOf(sample, mine, command)
    const before = await stateWith(mine)
    const ask = (body: unknown) => setUpFor(sample, () => send(procedure, caller.headers, body))
    const first = await ask(input)
    expect(first).toMatchObject({ ok: true })
    if (!command) return
    const after = await stateWith(mine)
    expect(after).not.toEqual(before)
    expect(await ask(input)).toEqual(first)
    expect(await stateWith(mine)).toEqual(after)
    // A command that carries nothing but its id has no other body.
    if (Object.keys(input ?? {}).length === 1) return
    const body = sample.other ? { ...input, ...sample.other } : withValue(input, paths[0] ?? [], newId())
    expect(await ask(body)).toMatchObject({ code: 'command-reused', status: 422 })
    expect(await stateWith(mine)).toEqual(after)
  })
})

test('a command id that another firm used is free in this one', async () => {
  const mine = await freshFirm()
  const add = procedures.find((one) => one.name === 'water.addSupply')
  if (!add) throw new Error('water.addSupply is gone')
  const input = { commandId: theirs.appliedId, name: 'Weir village', kind: 'town' }
  const before = await stateWith(mine)
  expect(await send(add.procedure, caller.headers, input)).toMatchObject({ ok: true })
  const after = await stateWith(mine)
  for (const key of Object.keys(before)) if (key.endsWith(theirs.companyId)) expect([key, after[key]]).toEqual([key, before[key]])
  expect(after[`water_supply ${mine.companyId}`]).not.toBe(before[`water_supply ${mine.companyId}`])
})
