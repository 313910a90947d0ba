import { closeClients } from '@almanac/database/client'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { afterAll, expect, it } from 'vitest'
import { testDatabase } from '../../tests/support/test-database.ts'
import { loadDemo } from './load-demo.ts'
import { DEMO_SIGN_INS } from './sign-ins.ts'

afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

it('loads both firms once, whoever asks how often', async () => {
  const database = await testDatabase()
  const options = { ...database, anchorDay: '2026-11-25', log: () => {} }
  // two starts at the same moment: one loads, the other finds it done
  expect((await Promise.all([loadDemo(options), loadDemo(options)])).sort()).toEqual([false, true])
  expect(await loadDemo(options)).toBe(false)

  const db = new pg.Client({ connectionString: database.superUrl })
  await db.connect()
  const rows = async (sql: string) => (await db.query(sql)).rows
  try {
    expect(
      await rows(`select c.name, c.currency, count(s.id)::int as sites from company c join site s on s.company_id = c.id
                   group by c.id order by sites desc`),
    ).toEqual([
      { name: 'Larkmoor Soft Water', currency: 'USD', sites: 1500 },
      { name: 'Brackwater Softeners', currency: 'EUR', sites: 60 },
    ])
    expect(await rows(`select count(*)::int as n from site where company_id not in (select id from company)`)).toEqual([{ n: 0 }])
    expect(await rows(`select count(*)::int as n from queue.job where name = 'forecast-company'`)).toEqual([{ n: 2 }])
    expect(await rows('select count(*)::int as n from person')).toEqual([{ n: DEMO_SIGN_INS.length }])
    const both =
      await rows(`select m.role, c.name from membership m join person p on p.id = m.person_id join company c on c.id = m.company_id
                              where p.email = 'dispatcher@larkmoor.example.com' order by c.name`)
    expect(both).toEqual([
      { role: 'owner', name: 'Brackwater Softeners' },
      { role: 'dispatcher', name: 'Larkmoor Soft Water' },
    ])
    // every site can be found by a word of its own
    expect(
      await rows(`select count(*)::int as n from site s where not exists (select from search_token t where t.site_id = s.id)`),
    ).toEqual([{ n: 0 }])
  } finally {
    await db.end()
  }
}, 240_000)
