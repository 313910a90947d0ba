import fs from 'node:fs'
import path from 'node:path'
import type { ChangedEntity } from '@almanac/contract/changed-entity'
import { CHANGES, type CommandName, queriesShowing, SHOWS } from '@almanac/contract/changes'
import { contract } from '@almanac/contract/contract'
import { closeClients } from '@almanac/database/client'
import { addMembership } from '@almanac/identity/people'
import { bringIn, makeFirm } from '@almanac/operations/imports/test-import'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { CHANNEL, type Change } from '@almanac/runtime/live'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { QueryClient, QueryObserver } from '@tanstack/react-query'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { changedBy, fetchChanged } from '../../apps/web/client/fetch-changed.ts'
import { makeArchivedThings } from '../support/archived-things.ts'
import { NOW } from '../support/records.ts'
import { inspector, makeFirmRecords } from '../support/two-firms.ts'
import { isCommand } from './id-fields.ts'
import { inputOf, SAMPLES } from './sample-calls.ts'
import { setUpFor } from './sample-env.ts'
import { allProcedures, type Caller, makeCaller, send } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

const names = Object.entries(contract).flatMap(([domain, verbs]) => Object.keys(verbs).map((verb) => `${domain}.${verb}`))
const commands = allProcedures().filter((one) => isCommand(one.input))
/** Every entity that the code announces, by its text: `announce('site', …)`. */
const announced = new Set(
  fs
    .globSync('packages/operations/**/*.ts', { cwd: path.resolve(import.meta.dirname, '../..') })
    .flatMap((file) => [...fs.readFileSync(path.resolve(import.meta.dirname, '../..', file), 'utf8').matchAll(/announce\('([a-z-]+)'/g)])
    .map((found) => found[1] ?? ''),
)

/** No command is about people’s ways in. */
const NOBODY = { otherPersonId: newId(), otherSessionId: newId(), invitationId: newId(), passkeyId: newId() }

let db: pg.Client
let caller: Caller
let heard: Change[] = []

/** What was said by now: a notice of our own comes after all that were said before it. */
async function all(companyId: string): Promise<string[]> {
  const last = newId()
  await db.query('select pg_notify($1, $2)', [CHANNEL, JSON.stringify({ company: 'none', entity: 'last', id: last })])
  await vi.waitFor(() => expect(heard.some((one) => one.id === last)).toBe(true))
  return heard.filter((one) => one.company === companyId).map((one) => one.entity)
}

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = '100000'
  setClock(() => new Date(NOW))
  caller = await makeCaller()
  db.on('notification', ({ payload }) => heard.push(JSON.parse(payload ?? '') as Change))
  await db.query(`listen ${CHANNEL}`)
})
beforeEach(() => {
  heard = []
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('the map of changes', () => {
  test('has each procedure once, as a query or as a command', () => {
    expect([...Object.keys(SHOWS), ...Object.keys(CHANGES)].sort()).toEqual(names.sort())
  })
  test('has each query fetched again for some entity; a person’s own sessions and passkeys alone are no record of the company', () => {
    expect(
      Object.entries(SHOWS)
        .filter(([, shown]) => shown.length === 0)
        .map(([name]) => name),
    ).toEqual(['session.list', 'session.passkeys'])
  })
  test('has each entity that is announced shown by some query, and each that a query shows announced by someone', () => {
    expect([...announced].filter((entity) => queriesShowing([entity as ChangedEntity]).size === 0)).toEqual([])
    // Bound to a list in the code rather than written out.
    const listed = ['site', 'customer', 'contact', 'softener', 'bed', 'water-supply']
    // Told by the database itself: packages/identity/members.test.ts.
    listed.push('member')
    const shown = new Set(Object.values(SHOWS).flat())
    expect([...shown].filter((entity) => !announced.has(entity) && !listed.includes(entity))).toEqual([])
  })
  test('has all fetched again when notices may have been missed', () => {
    expect(queriesShowing(['everything'])).toEqual(new Set(Object.keys(SHOWS)))
  })
})

/** Queries that ask for work in the background, which tells of its own end. */
const TELLS_LATER = ['forecasts.checkAgain']

describe.each(commands)('$name', ({ name, domain, verb, procedure }) => {
  test('announces something, and nothing that the map does not have of it', async () => {
    const mine = await makeFirmRecords(db, caller.personId)
    const things = await makeArchivedThings(db, mine.companyId, mine.siteId)
    await addMembership(caller.personId, mine.companyId, 'owner')
    await db.query('update session set active_company_id = $1 where id = $2', [mine.companyId, caller.sessionId])
    // The test's own: the database tells of a new member.
    await all(mine.companyId)
    heard = []
    const sample = SAMPLES[domain]?.[verb]
    if (!sample) throw new Error(`no sample of ${name}`)
    const input = inputOf(sample, { ...mine, ...NOBODY, ...things, sessionId: caller.sessionId }, true)
    expect(await setUpFor(sample, () => send(procedure, caller.headers, input))).toMatchObject({ ok: true })
    const said = new Set(await all(mine.companyId))
    expect([...said].filter((entity) => !(CHANGES[name as CommandName] as readonly string[]).includes(entity))).toEqual([])
    if (!TELLS_LATER.includes(name)) expect(said.size).toBeGreaterThan(0)
  })
})

describe('a board that is open', () => {
  const company = newId()
  const key = (name: string) => [[company, ...name.split('.')], { type: 'query', input: {} }]

  /** Opens screens as a browser does; answers how often each has been fetched. */
  async function open(queries: QueryClient, shown: string[]) {
    const fetched = new Map(shown.map((name) => [name, 0]))
    for (const name of shown) {
      const queryFn = async () => fetched.set(name, (fetched.get(name) ?? 0) + 1).size
      new QueryObserver(queries, { queryKey: key(name), queryFn }).subscribe(() => undefined)
    }
    await vi.waitFor(() => expect([...fetched.values()]).toEqual(shown.map(() => 1)))
    return fetched
  }

  test('is not fetched each second while someone brings a list in, and once when its records are there', async () => {
    const firm = await makeFirm()
    const list = `Name,Street,Tank\n${Array.from({ length: 300 }, (_, n) => `Hanna ${n},Weir Road ${n},10x54`).join('\n')}`
    await bringIn(firm, list)
    const said = (await all(firm.companyId)) as ChangedEntity[]
    expect(said.filter((entity) => entity === 'import-batch').length).toBeGreaterThan(2)
    const [first, last] = [said.indexOf('site'), said.lastIndexOf('import-batch')]
    // Upload, check and progress name the import alone; the end names the records, all at one time.
    expect(new Set(said.slice(0, first))).toEqual(new Set(['import-batch']))
    expect(last).toBeLessThan(first)
    const queries = new QueryClient({ defaultOptions: { queries: { staleTime: 15_000 } } })
    const fetched = await open(queries, ['daySheets.day', 'jobs.overview', 'imports.batch'])
    for (let second = 0; second < 30; second++) await fetchChanged(queries, ['import-batch'])
    expect(Object.fromEntries(fetched)).toEqual({ 'daySheets.day': 1, 'jobs.overview': 1, 'imports.batch': 31 })
    await fetchChanged(queries, said.slice(first - 1))
    expect(Object.fromEntries(fetched)).toEqual({ 'daySheets.day': 2, 'jobs.overview': 1, 'imports.batch': 32 })
    queries.clear()
  })

  test('fetches after a command what that changed, and after an unknown one everything', async () => {
    expect(await changedBy([[company, 'jobs', 'book'], { type: 'mutation' }])).toEqual(['job', 'visit', 'kit', 'call-back'])
    expect(await changedBy(undefined)).toEqual(['everything'])
  })
})
