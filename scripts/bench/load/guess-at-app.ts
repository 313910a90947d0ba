import http from 'node:http'
import { addMembership, addPerson } from '@almanac/identity/people'
import { newId } from '@almanac/runtime/ids'
import pg from 'pg'
import { type RawAnswer, rawRequest } from './raw-request.ts'
import { table } from './table.ts'
import { quantile, round } from './timing.ts'

const PASSWORD = 'resin beads in a brine tank'
const OTHERS_EVERY_MS = 250
/** The guesses all come over one connection's address, whatever they say: its requests are limited, and the owner's come from elsewhere. */
const OWNER_FROM = '127.0.0.2'

async function addFirm(db: pg.Client, name: string, email: string): Promise<void> {
  const id = newId()
  await db.query(`insert into company (id, name, time_zone, unit_system, currency) values ($1, $2, 'America/Phoenix', 'us', 'USD')`, [
    id,
    name,
  ])
  await addMembership(await addPerson({ name: 'Ada Roe', email, password: PASSWORD }), id, 'owner')
}

/** Guesses at one owner's password while another firm works and the owner signs in. */
export async function guessAtApp(
  app: { baseUrl: string; superUrl: string },
  how: { tries: number; clients: number },
  say: (line: string) => void,
) {
  const port = Number(new URL(app.baseUrl).port)
  const db = new pg.Client({ connectionString: app.superUrl })
  await db.connect()
  await addFirm(db, 'Guessed at', 'owner@guessed.example.com')
  await addFirm(db, 'Beside', 'owner@beside.example.com')
  const common = {
    host: `localhost:${port}`,
    origin: `http://localhost:${port}`,
    'content-type': 'application/json',
    'x-csrf-token': 'orpc',
  }
  const post = (path: string, body: object, headers: Record<string, string> = {}, agent?: http.Agent, from?: string) =>
    rawRequest(
      port,
      {
        method: 'POST',
        path,
        headers: { ...common, ...headers },
        body: { head: JSON.stringify(body), repeat: '', times: 0, tail: '' },
        from,
      },
      agent,
    )
  const signIn = (email: string, password: string, headers: Record<string, string> = {}, agent?: http.Agent, from?: string) =>
    post('/api/auth/sign-in/email', { email, password }, headers, agent, from)
  const cookieOf = (answer: RawAnswer) => (answer.headers['set-cookie'] ?? []).map((one) => one.split(';')[0]).join('; ')
  const owner = await signIn('owner@guessed.example.com', PASSWORD)
  const beside = await signIn('owner@beside.example.com', PASSWORD)
  if (owner.status !== 200 || beside.status !== 200)
    throw new Error(`Signing in before the guesses answered ${owner.status} and ${beside.status}.`)
  // The address counts as a known place while a session of it stands: only the device is to help here.
  await db.query(`update session set ip_address = '203.0.113.1'`)

  const agent = new http.Agent({ keepAlive: true, maxSockets: how.clients })
  const statuses = new Map<number, number>()
  let tried = 0
  let running = true
  const guesser = async () => {
    while (tried < how.tries) {
      const turn = tried++
      const from = `${1 + (turn % 223)}.${(turn >> 8) % 256}.${turn % 256}.7`
      const { status } = await signIn(
        'owner@guessed.example.com',
        `guess number ${turn}`,
        { 'x-forwarded-for': from, forwarded: `for=${from}` },
        agent,
      )
      statuses.set(status, (statuses.get(status) ?? 0) + 1)
      if (turn > 0 && turn % 2000 === 0) say(`${turn} of ${how.tries} guesses`)
    }
  }
  const health: number[] = []
  const others: RawAnswer[] = []
  const owners: RawAnswer[] = []
  const watch = async () => {
    while (running) {
      health.push((await rawRequest(port, { method: 'GET', path: '/healthz', headers: { host: common.host } })).ms)
      others.push(await post('/api/rpc/sites/list', { json: { limit: 50 } }, { cookie: cookieOf(beside) }))
      if (others.length % 8 === 1)
        owners.push(await signIn('owner@guessed.example.com', PASSWORD, { cookie: cookieOf(owner) }, undefined, OWNER_FROM))
      await new Promise((next) => setTimeout(next, OTHERS_EVERY_MS))
    }
  }
  const begun = performance.now()
  const watching = watch()
  await Promise.all(Array.from({ length: how.clients }, guesser))
  running = false
  await watching
  agent.destroy()
  const { rows } = await db.query<{ failed: number }>(
    `select coalesce(sum(count), 0)::int as failed from identity_event where kind = 'sign-in-failed'`,
  )
  const { rows: kept } = await db.query<{ guard: number; windows: number }>(
    'select (select count(*)::int from sign_in_guard) as guard, (select count(*)::int from request_window) as windows',
  )
  await db.end()

  const p95 = (all: number[]) =>
    Math.round(
      quantile(
        [...all].sort((a, b) => a - b),
        0.95,
      ),
    )
  const failedOf = (all: RawAnswer[]) => all.filter(({ status }) => status !== 200).length
  console.log(
    table(
      `Answers to ${how.tries} guesses from made-up addresses`,
      ['status', 'answers'],
      [...statuses].map(([status, count]) => [String(status), count]),
    ),
  )
  return {
    tries: how.tries,
    seconds: round((performance.now() - begun) / 1000, 1),
    passwordsChecked: rows[0]?.failed ?? 0,
    ownerSignIns: owners.length,
    ownerRefused: failedOf(owners),
    ownerStatuses: owners.map(({ status }) => status).join(' '),
    otherFirmRequests: others.length,
    otherFirmFailed: failedOf(others),
    otherFirmP95Ms: p95(others.map(({ ms }) => ms)),
    healthP95Ms: p95(health),
    rowsKept: (kept[0]?.guard ?? 0) + (kept[0]?.windows ?? 0),
  }
}
