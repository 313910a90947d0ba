import { spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { refuseBypassingLogins } from '@almanac/database/login-check'
import { forgetConfig } from '@almanac/runtime/config'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type TestDatabase, testDatabase } from '../support/test-database.ts'
import { inspector } from '../support/two-firms.ts'

const root = path.resolve(import.meta.dirname, '../..')
const suffix = `${process.pid}_${Math.floor(performance.now())}`
const [BYPASS, MEMBER, PLAIN] = [`test_bypass_${suffix}`, `test_member_${suffix}`, `test_plain_${suffix}`]
let db: pg.Client
let urls: TestDatabase

/** The same database at another login. */
function as(role: string): string {
  const url = new URL(urls.appUrl)
  url.username = role
  url.password = 'only for this test'
  return url.href
}

beforeAll(async () => {
  urls = await testDatabase()
  db = await inspector()
  await db.query(`create role ${BYPASS} login bypassrls password 'only for this test' in role almanac_app`)
  await db.query(`create role ${MEMBER} login password 'only for this test' in role almanac_app, almanac_owner`)
  await db.query(`create role ${PLAIN} login password 'only for this test' in role almanac_app`)
})
afterAll(async () => {
  await closeClients()
  await db.query(`drop role ${BYPASS}, ${MEMBER}, ${PLAIN}`)
  await db.end()
})

/** The check as at a start with these addresses. */
async function startWith(appUrl: string, identityUrl = urls.identityUrl): Promise<void> {
  await closeClients()
  Object.assign(process.env, { DATABASE_URL: appUrl, IDENTITY_DATABASE_URL: identityUrl })
  forgetConfig()
  await refuseBypassingLogins()
}

describe('a start is refused with', () => {
  test.each([
    ['the superuser', () => urls.superUrl, 'is a superuser'],
    ['the owner of the tables', () => urls.migrationUrl, 'owns .*tables'],
    ['a login that bypasses row security', () => as(BYPASS), 'has BYPASSRLS'],
    ['a member of the owner', () => as(MEMBER), 'is a member of almanac_owner'],
  ])('%s', async (_who, url, why) => {
    const refusal = { code: 'misconfigured', message: expect.stringMatching(new RegExp(`^DATABASE_URL: .* ${why}.* does not start`)) }
    await expect(startWith(url())).rejects.toMatchObject(refusal)
    const identity = { code: 'misconfigured', message: expect.stringMatching(new RegExp(`^IDENTITY_DATABASE_URL: .* ${why}`)) }
    await expect(startWith(urls.appUrl, url())).rejects.toMatchObject(identity)
  })
})

describe('a start is refused with a login that', () => {
  const odd = `test_odd_${suffix}`
  // each is made for its test, with what makes it powerful beside the app's rights
  test.each([
    ['may make roles', `alter role ${odd} createrole`, 'may make roles'],
    ['may make databases', `alter role ${odd} createdb`, 'may make databases'],
    ['may replicate', `alter role ${odd} replication`, 'by replication'],
    ...['pg_execute_server_program', 'pg_write_server_files', 'pg_read_server_files', 'pg_read_all_data'].map((role) => [
      `is a member of ${role}`,
      `grant ${role} to ${odd}`,
      `is a member of ${role}`,
    ]),
    [
      'may become the owner without inheriting from it',
      `alter role ${odd} noinherit; grant almanac_owner to ${odd}`,
      'is a member of almanac_owner',
    ],
    ['owns the database', `alter database current owner to ${odd}`, 'owns the database'],
    ['owns the schema', `alter schema public owner to ${odd}`, 'owns schema public'],
    ['owns a definer function', `alter function almanac_company_ids() owner to ${odd}`, 'owns functions'],
    ['may read the sign-ins too', `grant almanac_identity to ${odd}`, 'may read the tables of sign-in'],
    ['may make temporary tables', `grant temporary on database current to ${odd}`, 'may make temporary tables'],
  ])('%s', async (_what, sql, why) => {
    const { rows } = await db.query<{ name: string }>('select quote_ident(current_database()) as name')
    await db.query(`create role ${odd} login password 'only for this test' in role almanac_app`)
    try {
      await db.query((sql ?? '').replaceAll('database current', `database ${rows[0]?.name}`))
      await expect(startWith(as(odd))).rejects.toMatchObject({ code: 'misconfigured', message: expect.stringContaining(why ?? '') })
    } finally {
      await closeClients()
      await db.query(
        `reassign owned by ${odd} to almanac_owner; alter schema public owner to pg_database_owner; drop owned by ${odd}; drop role ${odd}`,
      )
    }
  })

  test('is the other one, or one for both', async () => {
    const swapped = { message: expect.stringContaining('may read the tables of sign-in') }
    await expect(startWith(urls.identityUrl, urls.appUrl)).rejects.toMatchObject(swapped)
    await expect(startWith(urls.identityUrl, urls.identityUrl)).rejects.toMatchObject(swapped)
    await expect(startWith(urls.appUrl, urls.appUrl)).rejects.toMatchObject({
      message: expect.stringContaining('may read the tables of the companies'),
    })
  })
})

test.each([
  ['the app’s own login', () => urls.appUrl],
  ['another plain login with the app’s rights', () => as(PLAIN)],
])('a start goes on with %s', async (_who, url) => {
  await expect(startWith(url())).resolves.toBeUndefined()
})

/** Runs a real process of the app until it ends, or until a line of its log matches; then it is asked to stop. */
async function run(args: string[], appUrl: string, until?: RegExp): Promise<{ code: number | null; lines: string[] }> {
  const env = { ...process.env, DATABASE_URL: appUrl, IDENTITY_DATABASE_URL: urls.identityUrl, LOG_LEVEL: 'info', NODE_OPTIONS: '' }
  const child = spawn(process.execPath, args, { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] })
  let said = ''
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk) => {
      said += chunk
      if (until?.test(said)) child.kill('SIGTERM')
    })
  const [code] = (await once(child, 'close')) as [number | null]
  return { code, lines: said.split('\n').filter((line) => line.trim() && !/Warning|--trace-/.test(line)) }
}

describe('the real worker', { timeout: 60_000 }, () => {
  test('ends with one sentence when its login is a superuser', async () => {
    const { code, lines } = await run(['apps/worker/main.ts'], urls.superUrl)
    expect(code).toBe(1)
    expect(lines).toHaveLength(1)
    expect(JSON.parse(lines[0] ?? '')).toMatchObject({ level: 'fatal', msg: expect.stringContaining('is a superuser') })
  })
  test('starts with the app’s login, and stops when asked', async () => {
    const { code, lines } = await run(['apps/worker/main.ts'], urls.appUrl, /worker is ready/)
    expect(lines.join('\n')).toContain('worker is ready')
    expect(code).toBe(0)
  })
  test('takes what a clock that was two weeks ahead left behind back to the present, so that nights and tasks go on', async () => {
    const ahead = `now() + interval '13 days'`
    await db.query(`update queue.version set cron_on = ${ahead}`)
    await db.query(`update queue.queue set monitor_claim_on = ${ahead}, monitor_on = ${ahead}, maintain_on = ${ahead}`)
    const task = (key: string, columns: string, values: string) =>
      db.query(`insert into queue.job (name, singleton_key, ${columns}) values ('nightly', '${key}', ${values})`)
    await task('retry', 'state, start_after', `'retry', ${ahead}`)
    await task('new', 'created_on, start_after', `${ahead}, ${ahead}`)
    await task('later', 'created_on, start_after', `${ahead}, ${ahead} + interval '2 days'`)
    await task('lost', 'state, started_on, heartbeat_on, heartbeat_seconds', `'active', ${ahead}, ${ahead}, 15`)
    await task('night', 'state, singleton_on', `'completed', (${ahead}) at time zone 'utc'`)
    await run(['apps/worker/main.ts'], urls.appUrl, /worker is ready/)
    const { rows: claims } = await db.query(
      `select greatest(cron_on, (select max(greatest(monitor_claim_on, monitor_on, maintain_on)) from queue.queue)) <= now() as past from queue.version`,
    )
    expect(claims).toEqual([{ past: true }])
    const { rows } = await db.query<{ key: string; days: number }>(
      `select singleton_key as key, round(extract(epoch from greatest(start_after, heartbeat_on) - now()) / 86400)::int as days from queue.job
       where name = 'nightly' and singleton_key in ('retry', 'new', 'later', 'lost', 'night') and state <> 'completed' order by 1`,
    )
    // Put off by two days when it was asked for, and still.
    expect(rows.filter((row) => row.days !== 0)).toEqual([{ key: 'later', days: 2 }])
    const { rowCount } = await db.query(`select from queue.job where singleton_key = 'night'`)
    expect(rowCount).toBe(0)
  })
  test('the web server’s own check ends its process in the same way', async () => {
    const check = `import('./apps/web/instrumentation-node.ts').then((one) => one.checkDatabase()).then(() => process.exit(7))`
    const { code, lines } = await run(['-e', check], urls.superUrl)
    expect(code).toBe(1)
    expect(lines.join('\n')).toContain('is a superuser')
    expect((await run(['-e', check], urls.appUrl)).code).toBe(7)
  })
})
