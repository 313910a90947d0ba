import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import { describe, expect, test, vi } from 'vitest'

// Plain JavaScript, without types of its own.
const script = (name: string) => import(new URL(`../../scripts/${name}.mjs`, import.meta.url).href)
const { keepUp, waitMs } = await script('support/supervise')
const { startPostgres } = await script('postgres')
const { clusterPlace } = await script('support/cluster-place')

/** A process that ends when it is told to, by what `end` says. */
function fake() {
  const begun: { end: (how: string) => void }[] = []
  const begin = () => {
    let end: (how: string) => void = () => {}
    const ended = new Promise<string>((resolve) => {
      end = resolve
    })
    begun.push({ end })
    return { ended, stop: async () => end('was ended by SIGTERM') }
  }
  return { begun, begin }
}

describe('a process that is kept up', () => {
  test('is begun again when it ends, each time is told, and a stop is no end', async () => {
    const { begun, begin } = fake()
    const said: string[] = []
    const kept = keepUp(
      'worker',
      begin,
      (line: string) => said.push(line),
      () => 0,
    )
    kept.settled()
    begun[0]?.end('was ended by SIGKILL: its last words')
    await vi.waitFor(() => expect(begun).toHaveLength(2))
    begun[1]?.end('ended with code 1: other words')
    await vi.waitFor(() => expect(begun).toHaveLength(3))
    expect(said).toEqual([
      'The worker was ended by SIGKILL: its last words; starting it again',
      'The worker ended with code 1: other words; starting it again (try 2)',
    ])
    await kept.stop()
    expect(begun).toHaveLength(3)
  })

  test('is not begun again before it was settled: what keeps it from starting must be read', async () => {
    const { begun, begin } = fake()
    const kept = keepUp(
      'web server',
      begin,
      () => {},
      () => 0,
    )
    begun[0]?.end('ended with code 1: The configuration is not complete')
    await expect(kept.failed).resolves.toBe('The web server ended with code 1: The configuration is not complete')
    expect(begun).toHaveLength(1)
  })

  test('that could not even be begun is tried again', async () => {
    const { begun, begin } = fake()
    let full = true
    const said: string[] = []
    const beginWhenFree = () => {
      if (begun.length === 1 && full) {
        full = false
        throw new Error('ENOSPC: no space left on device')
      }
      return begin()
    }
    const kept = keepUp(
      'worker',
      beginWhenFree,
      (line: string) => said.push(line),
      () => 0,
    )
    kept.settled()
    begun[0]?.end('ended with code 1')
    await vi.waitFor(() => expect(begun).toHaveLength(2))
    expect(said.at(-1)).toBe('The worker could not be started: ENOSPC: no space left on device; starting it again (try 2)')
    await kept.stop()
  })

  test('is given up when it ended twenty times in a row', async () => {
    let count = 0
    const begin = () => ({ ended: sleep(1).then(() => `ended with code ${++count}`), stop: async () => {} })
    const kept = keepUp(
      'worker',
      begin,
      () => {},
      () => 0,
    )
    kept.settled()
    await expect(kept.failed).resolves.toMatch(/^The worker ended with code 20\n.*20th time in a row/)
  })

  test('is waited for longer each time, a quarter of a minute at the most', () => {
    expect([1, 2, 3, 6, 7, 20].map(waitMs)).toEqual([250, 500, 1000, 8000, 15_000, 15_000])
  })
})

test('the embedded PostgreSQL that was killed is up again by itself, with what was committed, its log kept and for its owner alone', async () => {
  const name = 'kept-up'
  const { home } = await clusterPlace()
  const remove = () => {
    for (const file of fs.readdirSync(home)) if (file.startsWith(name)) fs.rmSync(path.join(home, file), { recursive: true, force: true })
  }
  remove() // of a run that was killed
  const cluster = await startPostgres({ name, volatile: true })
  const said: string[] = []
  const ask = async (sql: string) => {
    const client = new pg.Client({ connectionString: cluster.url('postgres', 'postgres') })
    client.on('error', () => {})
    await client.connect()
    try {
      return (await client.query(sql)).rows
    } finally {
      await client.end()
    }
  }
  try {
    cluster.lookAfter((line: string) => said.push(line))
    await ask('create table kept (n int); insert into kept values (1)')
    await ask('checkpoint') // this test's server is quick and not safe: it writes down when told to
    const log = path.join(home, `${name}.log`)
    expect(fs.statSync(log).mode & 0o777).toBe(0o600)
    const before = fs.readFileSync(log, 'utf8')
    process.kill(Number(fs.readFileSync(path.join(cluster.data, 'postmaster.pid'), 'utf8').split('\n')[0]), 'SIGKILL')
    await vi.waitFor(async () => expect(await ask('select n from kept')).toEqual([{ n: 1 }]), { timeout: 60_000, interval: 200 })
    expect(said[0]).toBe('PostgreSQL has ended; starting it again')
    await vi.waitFor(() => expect(said.at(-1)).toBe('PostgreSQL is up again'))
    expect(fs.readFileSync(log, 'utf8').startsWith(before)).toBe(true)
  } finally {
    await cluster.stop()
  }
  // A server that was stopped on purpose stays down.
  await sleep(800)
  expect(fs.existsSync(path.join(cluster.data, 'postmaster.pid'))).toBe(false)
  remove()
})
