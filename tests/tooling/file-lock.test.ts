import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'

const lockModule = path.resolve(import.meta.dirname, '../../scripts/support/file-lock.mjs')
let dir: string

beforeEach(() => {
  dir = fs.mkdtempSync(path.join(os.tmpdir(), 'lock-'))
})
afterEach(() => fs.rmSync(dir, { recursive: true }))

/** A process that runs `body` with the lock held. */
function holder(body: string): ChildProcess {
  const script = `
    import fs from 'node:fs'
    import { setTimeout as sleep } from 'node:timers/promises'
    const { withLock } = await import(${JSON.stringify(lockModule)})
    await withLock(${JSON.stringify(path.join(dir, 'lock'))}, async () => { ${body} })`
  return spawn(process.execPath, ['--input-type=module', '-e', script], { stdio: ['ignore', 'pipe', 'inherit'] })
}

test('of eight processes only one holds the lock at a time', async () => {
  const counter = path.join(dir, 'counter')
  fs.writeFileSync(counter, '0')
  // Read, wait, write: without the lock, most of the eight would overwrite each other's count.
  const body = `const n = Number(fs.readFileSync(${JSON.stringify(counter)}, 'utf8')); await sleep(60); fs.writeFileSync(${JSON.stringify(counter)}, String(n + 1))`
  await Promise.all(Array.from({ length: 8 }, () => once(holder(body), 'exit')))
  expect(fs.readFileSync(counter, 'utf8')).toBe('8')
  expect(fs.existsSync(path.join(dir, 'lock'))).toBe(false)
})

test('a lock whose holder was killed is taken over', async () => {
  const first = holder(`console.log('held'); await sleep(60_000)`)
  await once(first.stdout as NodeJS.ReadableStream, 'data')
  first.kill('SIGKILL')
  await once(first, 'exit')
  expect(fs.existsSync(path.join(dir, 'lock'))).toBe(true)
  const [code] = await once(holder(''), 'exit')
  expect(code).toBe(0)
})

test('a lock is not taken for held because another program got its holder’s number', async () => {
  fs.writeFileSync(path.join(dir, 'lock'), JSON.stringify({ pid: process.pid, mark: 'of a process before the restart' }))
  const [code] = await once(holder(''), 'exit')
  expect(code).toBe(0)
})
