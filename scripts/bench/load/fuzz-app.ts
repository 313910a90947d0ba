import fs from 'node:fs'
import http from 'node:http'
import os from 'node:os'
import { addMembership, addPerson } from '@almanac/identity/people'
import { makePublicToken } from '@almanac/identity/public-token'
import { newId } from '@almanac/runtime/ids'
import pg from 'pg'
import { bodyBytes } from '../../../tests/support/fuzz/hostile-bodies.ts'
import { Chance } from '../../../tests/support/fuzz/random.ts'
import { type Known, nextRequest } from '../../../tests/support/fuzz/requests.ts'
import { writeRecords } from '../../../tests/support/records.ts'
import { course, FuzzNotes } from './fuzz-notes.ts'
import { rawRequest } from './raw-request.ts'
import { table } from './table.ts'
import { quantile, round } from './timing.ts'

/** Ends after so many requests or minutes, whichever comes first. */
type How = { requests: number; seed: number; clients: number; mostBytes: number; minutes: number }
const PASSWORD = 'resin beads in a brine tank'
const LOOK_EVERY_MS = 250

/** The process that listens on a port of this machine, by the kernel's tables; null where there are none to read. */
function listener(port: number): number | null {
  try {
    const inode = fs
      .readFileSync('/proc/net/tcp', 'utf8')
      .split('\n')
      .map((line) => line.trim().split(/\s+/))
      .find((part) => part[3] === '0A' && Number.parseInt(part[1]?.split(':')[1] ?? '', 16) === port)?.[9]
    const owns = (pid: string) =>
      fs.readdirSync(`/proc/${pid}/fd`).some((fd) => {
        try {
          return fs.readlinkSync(`/proc/${pid}/fd/${fd}`) === `socket:[${inode}]`
        } catch {
          return false
        }
      })
    const found = fs.readdirSync('/proc').find((pid) => {
      try {
        return /^\d+$/.test(pid) && owns(pid)
      } catch {
        return false
      }
    })
    return found ? Number(found) : null
  } catch {
    return null
  }
}
const megabytesOf = (pid: number) => Number(/VmRSS:\s+(\d+)/.exec(fs.readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024

async function session(port: number, email: string): Promise<string> {
  const text = JSON.stringify({ email, password: PASSWORD })
  const headers = { host: `localhost:${port}`, origin: `http://localhost:${port}`, 'content-type': 'application/json' }
  const body = { head: text, repeat: '', times: 0, tail: '' }
  const answer = await rawRequest(port, { method: 'POST', path: '/api/auth/sign-in/email', headers, body })
  if (answer.status !== 200) throw new Error(`Signing in answered ${answer.status}: ${answer.text.slice(0, 200)}`)
  return (answer.headers['set-cookie'] ?? []).map((one) => one.split(';')[0]).join('; ')
}

/** A firm with a record of each kind, its owner and a technician signed in, and links that work. */
async function prepare(superUrl: string, port: number, mostBytes: number) {
  const db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  const owner = await addPerson({ name: 'Ada Roe', email: 'owner@fuzz.example.com', password: PASSWORD })
  const made = newId()
  await db.query(
    `insert into company (id, name, time_zone, unit_system, currency) values ($1, 'Quarry Road Soft Water', 'America/Phoenix', 'us', 'USD')`,
    [made],
  )
  await db.end()
  const firm = { companyId: made, personId: owner, ...(await writeRecords({ companyId: made, personId: owner })) }
  await addMembership(owner, firm.companyId, 'owner')
  await addMembership(
    await addPerson({ name: 'Ben Roe', email: 'technician@fuzz.example.com', password: PASSWORD }),
    firm.companyId,
    'technician',
  )
  const { companyId } = firm
  const known: Known = {
    ids: Object.values(firm),
    arrivalTokens: [makePublicToken('arrival-windows', { companyId, id: firm.offerId })],
    reminderTokens: [makePublicToken('reminder', { companyId, id: firm.reminderId })],
    calendarTokens: [makePublicToken('calendar', { companyId, id: firm.feedId })],
    measureTokens: [makePublicToken('measure', { companyId, id: firm.guideId })],
    bedId: firm.bedId,
    batchId: firm.batchId,
    mostBytes,
    mostFileBytes: mostBytes,
  }
  const cookies = {
    owner: await session(port, 'owner@fuzz.example.com'),
    technician: await session(port, 'technician@fuzz.example.com'),
    nobody: '',
  }
  return { known, cookies }
}

/** Sends the requests, `clients` at a time, while another client asks /healthz and looks at the server's memory. */
export async function fuzzApp(app: { baseUrl: string; superUrl: string }, how: How, say: (line: string) => void) {
  const port = Number(new URL(app.baseUrl).port)
  const { known, cookies } = await prepare(app.superUrl, port, how.mostBytes)
  const chance = new Chance(how.seed)
  // As many connections as it takes: one whose body is still being sent after its answer must not make the next request wait for it.
  const agent = new http.Agent({ keepAlive: true, maxFreeSockets: how.clients })
  const notes = new FuzzNotes()
  const health: number[] = []
  const memory: number[] = []
  const busy: number[] = []
  const pid = listener(port)
  let running = true

  const watch = async () => {
    while (running) {
      const answer = await rawRequest(port, { method: 'GET', path: '/healthz', headers: { host: `localhost:${port}` } })
      health.push(answer.ms)
      if (answer.status !== 200) notes.wrong.push(`/healthz answered ${answer.status} ${answer.text.slice(0, 100)}`)
      if (pid) memory.push(megabytesOf(pid))
      busy.push(os.loadavg()[0] ?? 0)
      await new Promise((next) => setTimeout(next, LOOK_EVERY_MS))
    }
  }
  let turn = 0
  const progress = (mine: number) => {
    const { wrong, over3s, noAnswer } = notes.figures()
    const web = Math.round(memory.at(-1) ?? 0)
    return `${mine} of ${how.requests} requests; web ${web} MB; ${wrong} wrong, ${over3s} over 3 s, ${noAnswer} without an answer`
  }
  const end = performance.now() + how.minutes * 60_000
  const client = async () => {
    while (turn < how.requests && performance.now() < end) {
      const mine = turn++
      const request = nextRequest(chance, known)
      const chunked = chance.happens(0.3)
      const headers = { ...request.headers, host: `localhost:${port}`, origin: `http://localhost:${port}`, cookie: cookies[request.as] }
      const answer = await rawRequest(port, { ...request, headers, chunked }, agent)
      notes.add({ turn: mine, request, bytes: request.body ? bodyBytes(request.body) : 0, chunked, ...answer })
      if (mine > 0 && mine % 2000 === 0) say(progress(mine))
    }
  }
  const begun = performance.now()
  const watching = watch()
  await Promise.all(Array.from({ length: how.clients }, client))
  running = false
  await watching
  agent.destroy()

  const seconds = round((performance.now() - begun) / 1000, 1)
  health.sort((a, b) => a - b)
  const asked = Math.min(turn, how.requests)
  console.log(
    table(
      `Answers to ${asked} requests, seed ${how.seed}, in ${seconds} s`,
      ['status', 'answers'],
      [...notes.statuses].sort((a, b) => a[0] - b[0]).map(([status, count]) => [status === 0 ? 'none' : String(status), count]),
    ),
  )
  for (const one of notes.tables()) console.log(one)
  const { wrong } = notes
  console.log(wrong.length ? `Wrong:\n${wrong.slice(0, 40).join('\n')}` : 'No failure and no stack.')
  return {
    requests: asked,
    seed: how.seed,
    seconds,
    requestsPerSecond: round(asked / seconds, 1),
    ...notes.figures(),
    healthP95Ms: Math.round(quantile(health, 0.95)),
    healthMaxMs: Math.round(health.at(-1) ?? 0),
    webMegabytes: course(memory),
    // Processes that want a core, this run's own among them: above the number of cores the times are of waiting, not of work.
    cores: os.availableParallelism(),
    load: course(busy),
  }
}
