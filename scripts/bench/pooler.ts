import { execFileSync, spawn } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import { freePort } from '../support/free-port.mjs'
import { PlainError } from '../support/say.mjs'

type Database = { urls: Record<string, string>; superUrl: string }
type Bench = { say: (line: string) => void; openDatabase: () => Promise<Database>; later: (close: () => Promise<void>) => void }

const LOGINS = ['DATABASE_URL', 'IDENTITY_DATABASE_URL'] as const
const [FIRMS, TURNS, CHANGES] = [2, 300, 20]

/** PgBouncer as its package has it, in transaction mode, with nothing ignored: four connections for everybody. */
async function openPooler(urls: Record<string, string>, later: Bench['later']): Promise<(url: string) => string> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-pooler-'))
  fs.chmodSync(folder, 0o755)
  const port = await freePort()
  const logins = LOGINS.map((name) => new URL(urls[name] ?? ''))
  fs.writeFileSync(
    path.join(folder, 'users'),
    logins.map(({ username, password }) => `"${username}" "${decodeURIComponent(password)}"\n`).join(''),
  )
  const settings = {
    listen_addr: '127.0.0.1',
    listen_port: port,
    unix_socket_dir: '',
    auth_type: 'scram-sha-256',
    auth_file: path.join(folder, 'users'),
    pool_mode: 'transaction',
    default_pool_size: 4,
  }
  const lines = Object.entries(settings).map(([name, value]) => `${name} = ${value}`)
  fs.writeFileSync(path.join(folder, 'ini'), `[databases]\n* = host=127.0.0.1 port=${logins[0]?.port}\n[pgbouncer]\n${lines.join('\n')}\n`)
  const asRoot = process.getuid?.() === 0
  const log = fs.openSync(path.join(folder, 'log'), 'a')
  const server = spawn('pgbouncer', [...(asRoot ? ['-u', 'nobody'] : []), path.join(folder, 'ini')], { stdio: ['ignore', log, log] })
  later(async () => {
    server.kill('SIGINT')
    fs.rmSync(folder, { recursive: true, force: true })
  })
  await sleep(1000)
  if (server.exitCode !== null) throw new Error(`pgbouncer ended: ${fs.readFileSync(path.join(folder, 'log'), 'utf8')}`)
  return (url) => {
    const through = new URL(url)
    through.port = String(port)
    return through.href
  }
}

/** Whether live changes arrive on a connection to `url`, and how many of some changes did. */
async function listen(url: string): Promise<{ hearing: string; afterS: number; heard: number }> {
  const { LiveChanges } = await import('@almanac/runtime/live')
  const { sendNotice } = await import('@almanac/database/send-notice')
  const live = new LiveChanges(url, { send: sendNotice, everyMs: 1000, withinMs: 5000 })
  const company = '0193a1de-0000-7000-8000-000000000001'
  let heard = 0
  live.subscribe(company, ({ entity }) => {
    if (entity === 'bed') heard++
  })
  const begun = performance.now()
  await live.start()
  while (live.hearing === 'unknown') await sleep(50)
  const afterS = Number(((performance.now() - begun) / 1000).toFixed(1))
  for (let n = 0; n < CHANGES; n++) await sendNotice(JSON.stringify({ company, entity: 'bed', id: String(n) }))
  await sleep(1000)
  const answer = { hearing: live.hearing, afterS, heard }
  await live.stop()
  return answer
}

/**
 * Tries the app's own rooms behind a pooler in transaction mode (Debian's PgBouncer): the check at start, transactions of two companies at once, a task, and
 * live changes through the pooler (deaf, and noticed) and beside it. Fails when one of them is not as it must be.
 */
export default async function pooler({ say, openDatabase, later }: Bench) {
  try {
    execFileSync('pgbouncer', ['--version'], { stdio: 'pipe' })
  } catch {
    throw new PlainError('pgbouncer is not installed (Debian: apt-get install pgbouncer): nothing was tried.')
  }
  const { urls, superUrl } = await openDatabase()
  const through = await openPooler(urls, later)
  for (const name of LOGINS) process.env[name] = through(urls[name] ?? '')
  const { checkAtStart } = await import('@almanac/database/start-check')
  const { inCompany } = await import('@almanac/database/in-company')
  const { closeClients } = await import('@almanac/database/client')
  const { closeTaskQueue, sendTaskAlone, taskQueue } = await import('@almanac/runtime/task-queue')
  const { newId } = await import('@almanac/runtime/ids')
  later(closeClients)
  later(closeTaskQueue)

  await checkAtStart()
  say('the check at start goes through')

  const db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  const firms = Array.from({ length: FIRMS }, () => newId())
  for (const id of firms) {
    await db.query(`insert into company (id, name, time_zone, unit_system, currency) values ($1, 'Firm', 'UTC', 'us', 'USD')`, [id])
    await db.query(`insert into water_supply (company_id, id, name, kind) values ($1, $2, 'Town', 'town')`, [id, newId()])
  }
  const seen = await Promise.all(
    Array.from({ length: TURNS }, (_, turn) => {
      const companyId = firms[turn % FIRMS] ?? ''
      return inCompany({ companyId }, async (tx) => {
        const rows = await tx.waterSupply.findMany({ select: { companyId: true } })
        const [limits] = await tx.$queryRaw<{ lock: string }[]>`select current_setting('lock_timeout') as lock`
        return rows.length === 1 && rows[0]?.companyId === companyId && limits?.lock === '10s'
      })
    }),
  )
  const apart = seen.filter(Boolean).length
  say(`${apart} of ${TURNS} transactions saw their own company's rows and no other, with the limit on locks`)

  const boss = await taskQueue(true)
  const task = new Promise<boolean>((resolve) => {
    void boss.work('raise-reminders', { pollingIntervalSeconds: 0.5 }, async () => resolve(true))
  })
  await sendTaskAlone('raise-reminders', { companyId: firms[0] ?? '' })
  const worked = await Promise.race([task, sleep(15_000, false)])
  say(worked ? 'a task was sent and taken up' : 'a task was not taken up')

  const pooled = await listen(process.env.DATABASE_URL ?? '')
  say(`live changes through the pooler: ${pooled.hearing} after ${pooled.afterS} s, ${pooled.heard} of ${CHANGES} heard`)
  const direct = await listen(urls.DATABASE_URL ?? '')
  say(`live changes beside it (LIVE_DATABASE_URL): ${direct.hearing} after ${direct.afterS} s, ${direct.heard} of ${CHANGES} heard`)
  await db.end()
  if (apart !== TURNS || !worked || pooled.hearing !== 'deaf' || direct.hearing !== 'hears' || direct.heard !== CHANGES)
    process.exitCode = 1
  return { apart, turns: TURNS, worked, pooled, direct }
}
