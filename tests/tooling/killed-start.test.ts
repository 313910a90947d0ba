import { spawn } from 'node:child_process'
import { once } from 'node:events'
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'

// Plain JavaScript, without types of its own.
const script = (name: string) => import(new URL(`../../scripts/${name}.mjs`, import.meta.url).href)
const { startPostgres } = await script('postgres')
const { clusterPlace } = await script('support/cluster-place')
const { isAlive } = await script('support/alive')

const name = 'killed'
const { home } = await clusterPlace()
const data = path.join(home, name)
const remove = () => {
  for (const file of fs.readdirSync(home)) if (file.startsWith(name)) fs.rmSync(path.join(home, file), { recursive: true, force: true })
}
const left: number[] = []
beforeEach(remove)
afterEach(() => {
  for (const pid of [...left.splice(0), ...running()]) if (isAlive(pid)) process.kill(pid, 'SIGKILL') // of a test that failed
  remove()
})

const server = () => {
  const file = path.join(data, 'postmaster.pid')
  return fs.existsSync(file) ? Number(fs.readFileSync(file, 'utf8').split('\n')[0]) : 0
}
/** Processes that were started on this test's data, whether or not they have written down that they run. */
const running = () =>
  (fs.existsSync('/proc/self') ? fs.readdirSync('/proc') : [])
    .filter((pid) => /^\d+$/.test(pid))
    .map(Number)
    .filter((pid) => {
      try {
        return fs.readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(`${data}\0`)
      } catch {
        return false // it has ended meanwhile
      }
    })

test('a server that ends while everything is being stopped stays down', async () => {
  const cluster = await startPostgres({ name, volatile: true })
  const said: string[] = []
  const letGo = cluster.lookAfter((line: string) => said.push(line))
  letGo()
  process.kill(server(), 'SIGKILL')
  await sleep(1500)
  expect(said).toEqual([])
  await cluster.stop()
})

test('a server that is just being started again when all is stopped is stopped too', async () => {
  const cluster = await startPostgres({ name, volatile: true })
  const said: string[] = []
  cluster.lookAfter((line: string) => said.push(line))
  process.kill(server(), 'SIGKILL')
  await vi.waitFor(() => expect(said[0]).toBe('PostgreSQL has ended; starting it again'), { timeout: 10_000, interval: 5 })
  const before = performance.now()
  await cluster.stop()
  expect((performance.now() - before) / 1000).toBeLessThan(10)
  await sleep(1500)
  expect(running()).toEqual([])
  expect(said).toHaveLength(1)
})

/** A process that starts the server, or joins it, and ends at a signal without stopping anything, as others' programs do. */
function hasty(when: 'up' | 'starting') {
  const script = `process.on('SIGINT', () => process.exit(130))
    const { startPostgres } = await import(${JSON.stringify(new URL('../../scripts/postgres.mjs', import.meta.url).href)})
    const up = startPostgres({ name: '${name}', volatile: true })
    ${when === 'up' ? 'await up' : ''}
    console.log('ready')
    setInterval(() => {}, 1000)`
  return spawn(process.execPath, ['--input-type=module', '-e', script], { stdio: ['ignore', 'pipe', 'inherit'] })
}

test.each(['up', 'starting'] as const)('a server whose last user ends without stopping it, while it is %s, ends too', async (when) => {
  if (when === 'starting') await (await startPostgres({ name, volatile: true })).stop() // it is made already: only the start is met
  const user = hasty(when)
  await once(user.stdout, 'data')
  if (when === 'starting') await vi.waitFor(() => expect(running()).not.toEqual([]), { timeout: 10_000, interval: 5 })
  user.kill('SIGINT')
  expect(await once(user, 'exit')).toEqual([130, null])
  await vi.waitFor(() => expect(running()).toEqual([]), { timeout: 10_000 })
})

test('one that another still uses goes on', async () => {
  const mine = await startPostgres({ name, volatile: true })
  const user = hasty('up')
  await once(user.stdout, 'data')
  user.kill('SIGINT')
  await once(user, 'exit')
  await sleep(1000)
  expect(isAlive(server())).toBe(true)
  await mine.stop()
})

test('what a killed start leaves behind: its processes end by themselves, and the next one takes the database over', async () => {
  const start = spawn(process.execPath, [path.join(import.meta.dirname, 'start-to-kill.mjs'), name], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const [line] = (await once(start.stdout, 'data')) as [Buffer]
  const { willing, stubborn, port } = JSON.parse(line.toString()) as { willing: number; stubborn: number; port: number }
  left.push(willing, stubborn)
  const pid = server()
  start.kill('SIGKILL')
  await once(start, 'exit')
  await vi.waitFor(() => expect(isAlive(willing)).toBe(false), { timeout: 3000 })
  await vi.waitFor(() => expect(isAlive(stubborn)).toBe(false), { timeout: 15_000, interval: 100 })
  expect(isAlive(pid)).toBe(true)
  const next = await startPostgres({ name, volatile: true })
  expect(next.port).toBe(port)
  expect(server()).toBe(pid)
  await next.stop()
  await vi.waitFor(() => expect(running()).toEqual([]), { timeout: 5000 })
})
