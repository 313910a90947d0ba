import { closeClients } from '@almanac/database/client'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { makeArchivedThings } from '../support/archived-things.ts'
import { NOW } from '../support/records.ts'
import { inspector, makeFirmRecords } from '../support/two-firms.ts'
import { makeWaysIn } from '../support/ways-in.ts'
import { isCommand } from './id-fields.ts'
import type { SampleIds } from './sample-call.ts'
import { inputOf, SAMPLES } from './sample-calls.ts'
import { allProcedures, type Caller, makeCaller, send } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

let db: pg.Client
let mine: SampleIds
let owner: Caller

/** A copy of an input for each value in it that `of` takes, with that one replaced by what `of` gives. */
function variants(input: unknown, of: (value: unknown, key: string) => unknown, key = ''): [path: string, whole: unknown][] {
  const other = of(input, key)
  if (other !== undefined) return [[key, other]]
  if (input === null || typeof input !== 'object') return []
  return Object.entries(input).flatMap(([name, inner]) =>
    variants(inner, of, name).map(([path, changed]): [string, unknown] => [
      path === name ? name : `${name}.${path}`,
      Array.isArray(input) ? input.map((one, at) => (String(at) === name ? changed : one)) : { ...input, [name]: changed },
    ]),
  )
}

const DAY = /^\d{4}-\d{2}-\d{2}/
/** What no column of the database keeps: PostgreSQL has no zero character in a text, no half of a character in UTF-8, no year 0, and whole numbers to 2^31 - 1. */
const UNKEPT: Record<string, (value: unknown, key: string) => unknown> = {
  'a zero character': (value) => (typeof value === 'string' ? `${value}\u0000` : undefined),
  'half a character': (value) => (typeof value === 'string' ? `${value}\ud800` : undefined),
  'year 0': (value) => (typeof value === 'string' && DAY.test(value) ? value.replace(/^\d{4}/, '0000') : undefined),
  'a version beyond its column': (value, key) => (typeof value === 'number' && /version$/i.test(key) ? 2_147_483_648 : undefined),
}

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = '100000'
  setClock(() => new Date(NOW))
  const first = await makeCaller()
  const firm = await makeFirmRecords(db, first.personId)
  owner = await makeCaller(firm.companyId)
  mine = {
    ...firm,
    personId: owner.personId,
    sessionId: owner.sessionId,
    passkeyId: newId(),
    ...(await makeWaysIn(db, firm.companyId)),
    ...(await makeArchivedThings(db, firm.companyId, firm.siteId)),
  }
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe.each(allProcedures().filter((one) => one.input))('$name', ({ domain, verb, procedure, input: schema }) => {
  test.each(Object.entries(UNKEPT))('with %s anywhere is refused with a sentence', async (_, of) => {
    const sample = SAMPLES[domain]?.[verb]
    if (!sample) throw new Error('no sample')
    for (const [path, input] of variants(inputOf(sample, mine, isCommand(schema)), of))
      expect([path, await send(procedure, owner.headers, input)]).toEqual([
        path,
        expect.objectContaining({ ok: false, code: 'invalid', status: 400 }),
      ])
  })
})
