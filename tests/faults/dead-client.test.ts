import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { expect, test, vi } from 'vitest'
import { testDatabase } from '../support/test-database.ts'
import { inspector } from '../support/two-firms.ts'

// Only there does a server notice it in the middle of a statement.
test.runIf(process.platform === 'linux')('what a killed process held is given back though its statement goes on', async () => {
  const { superUrl } = await testDatabase()
  const script = `const { default: pg } = await import('pg')
    const db = new pg.Client({ connectionString: ${JSON.stringify(superUrl)} })
    await db.connect()
    await db.query('begin; select pg_advisory_xact_lock(77)')
    console.log('held')
    await db.query('select pg_sleep(60)')`
  const holder = spawn(process.execPath, ['--input-type=module', '-e', script], { stdio: ['ignore', 'pipe', 'inherit'] })
  await once(holder.stdout, 'data')
  const db = await inspector()
  const asleep = `select from pg_stat_activity where datname = current_database() and wait_event = 'PgSleep'`
  await vi.waitFor(async () => expect((await db.query(asleep)).rowCount).toBe(1), { timeout: 10_000 })
  holder.kill('SIGKILL')
  await once(holder, 'exit')
  const free = async () => (await db.query<{ free: boolean }>('select pg_try_advisory_lock(77) as free')).rows[0]?.free
  await vi.waitFor(async () => expect(await free()).toBe(true), { timeout: 8000, interval: 200 })
  await db.end()
})
