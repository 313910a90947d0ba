import { closeClients, identityClient } from '@almanac/database/client'
import { addPerson } from '@almanac/identity/people'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { HANDLERS } from '../../apps/worker/handlers.ts'
import { inspector } from '../support/two-firms.ts'

let db: pg.Client

beforeAll(async () => {
  db = await inspector()
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('what happened to ways in is forgotten after a year by the nightly task, and by nothing else', async () => {
  const id = await addPerson({ name: 'Ada Roe', email: `${newId()}@firm.example`, password: 'brine tanks bridge in summer' })
  for (const days of [364, 367])
    await db.query(
      `insert into identity_event (id, at, minute, kind, person_id) values ($1, now() - $3 * interval '1 day', now(), 'signed-in', $2)`,
      [newId(), id, days],
    )
  const ages = async () =>
    (
      await db.query<{ days: number }>(
        `select extract(day from now() - at)::int as days from identity_event where person_id = $1 order by 1`,
        [id],
      )
    ).rows.map(({ days }) => days)
  expect(await ages()).toEqual([364, 367])
  await HANDLERS.nightly({})
  expect(await ages()).toEqual([364])
  await expect(identityClient().$executeRaw`delete from identity_event`).rejects.toThrow(/permission denied/)
})
