import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { buildWeb, generateClient } from '../support/build.mjs'
import { findBroken, tasksAtWork } from './faults/invariants.ts'
import { Stack } from './faults/stack.ts'
import { Work } from './faults/work.ts'

type Bench = { args: string[]; say: (line: string) => void; later: (close: () => Promise<void>) => void }

const KINDS = ['web', 'worker', 'postgres', 'backend', 'start', 'disk', 'clock'] as const
type Kind = (typeof KINDS)[number]

/** All has to be up again by itself within so long; so has a task whose worker died, counted from the last fault: the next one may hit its next worker. */
const PATIENCE_S = 30
/** After so many faults there is a rest until every task of a dead worker was taken up. */
const REST_AFTER = 10
/** A worker at work says so every three seconds. */
const AT_WORK_S = 6
const CLOCK_DAYS = 13 // a session lasts fourteen

function option(args: string[], name: string, usual: string): string {
  const at = args.indexOf(`--${name}`)
  return at < 0 ? usual : (args[at + 1] ?? usual)
}

/** Numbers from a seed (mulberry32, public domain), so that a run can be had again. */
function chance(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

function kill(stack: Stack, kind: 'web' | 'worker' | 'postgres' | 'backend' | 'start', random: () => number): boolean {
  const pids = stack.pids(kind)
  const pid = pids[Math.floor(random() * pids.length)]
  if (pid === undefined) return false
  process.kill(pid, 'SIGKILL')
  return true
}

/** Fills the stack's own disk to the last byte, and frees it after a while. */
async function fillDisk(stack: Stack): Promise<void> {
  const file = path.join(stack.data, 'filler')
  const fd = fs.openSync(file, 'w')
  try {
    for (const size of [1 << 22, 1 << 12]) {
      const block = Buffer.alloc(size, 1)
      try {
        for (;;) fs.writeSync(fd, block)
      } catch {
        // full, as far as blocks of this size go
      }
    }
    await sleep(3000)
  } finally {
    fs.closeSync(fd)
    fs.rmSync(file)
  }
}

/** Tries until the port is free: web ends by itself when it notices that `npm start` is gone. */
async function startAgain(stack: Stack): Promise<void> {
  for (const end = performance.now() + PATIENCE_S * 1000; ; await sleep(300))
    try {
      return await stack.start()
    } catch (error) {
      if (performance.now() > end) throw error
    }
}

/** Does one fault; answers false when there was nothing to break. */
async function breakIt(stack: Stack, kind: Kind, random: () => number): Promise<boolean> {
  if (kind === 'disk') {
    await fillDisk(stack)
    return true
  }
  if (kind === 'clock') {
    stack.setClock(`+${CLOCK_DAYS}d`)
    await sleep(4000)
    stack.setClock('+0')
    await sleep(1200) // until every process has read it
    return true
  }
  if (!kill(stack, kind, random)) return false
  // Only what runs beside the app can start `npm start` again: here we are the host's process manager.
  if (kind === 'start') await startAgain(stack)
  return true
}

/** Seconds until the app is ready and a command was acknowledged since; undefined when it was not within the patience. */
async function untilBack(stack: Stack, work: Work, since: number): Promise<number | undefined> {
  for (; performance.now() - since < PATIENCE_S * 1000; await sleep(100)) {
    const ready = await fetch(`${stack.baseUrl}/readyz`, { signal: AbortSignal.timeout(3000) }).then(
      (answer) => answer.ok,
      () => false,
    )
    if (ready && work.done.last > since && ['web', 'worker', 'postgres'].every((kind) => stack.pids(kind as 'web').length > 0))
      return (performance.now() - since) / 1000
  }
  return undefined
}

/** Waits until nothing stands still at a worker that is no more; answers what does so in spite of the patience. */
async function untilTakenUp(stack: Stack): Promise<string | undefined> {
  for (const begun = performance.now(); ; await sleep(250)) {
    const { silent, silentS } = await tasksAtWork(stack.superUrl)
    if (silentS < AT_WORK_S) return undefined
    if (performance.now() - begun > PATIENCE_S * 1000) return `${silent} has stood still for ${Math.round(silentS)} s`
  }
}

/**
 * Breaks a running `npm start` at random while people import, plan, refit and close out: kill -9 of web, worker, PostgreSQL, one of its backends, start; a full
 * disk; a clock that jumps by 13 days and back. `--count 200 --seed 1 --minutes 60 --kinds web,worker,…`. Fails when something was not up again within 30
 * seconds, an acknowledged command was lost or done twice, or an invariant is broken.
 */
export default async function faults({ args, say, later }: Bench) {
  const count = Number(option(args, 'count', '200'))
  const seed = Number(option(args, 'seed', '1'))
  const minutes = Number(option(args, 'minutes', '60'))
  const wanted = option(args, 'kinds', KINDS.join(',')).split(',') as Kind[]
  if (![count, seed, minutes].every((n) => Number.isFinite(n) && n > 0) || wanted.some((kind) => !KINDS.includes(kind)))
    throw new Error(`--count, --seed and --minutes are numbers above 0, --kinds some of ${KINDS.join(',')}.`)
  const random = chance(seed)
  const stack = new Stack(say)
  const problems: string[] = []
  const found: Partial<Record<Kind, { times: number; longestS: number; acknowledged: number }>> = {}
  const during: Record<string, number> = {}
  let silentS = 0
  later(() => stack.close())
  // Not under a clock that we set, which each look at the time would pay for.
  await generateClient()
  const build = await buildWeb(() => say('another command is building: waiting for it'))
  later(async () => build.release())
  await stack.open(wanted)
  const kinds = wanted.filter((kind) => (kind !== 'disk' || stack.hasDisk) && (kind !== 'clock' || stack.hasClock))
  say('starting an app of its own to break')
  await stack.start()
  const work = new Work(stack)
  await work.signIn()
  work.begin()
  const end = performance.now() + minutes * 60_000
  let done = 0
  for (; done < count && performance.now() < end; done++) {
    await sleep(500 + random() * 1500)
    // Each kind once before any a second time, so that a short run has them all.
    const kind = (done < kinds.length ? kinds[done] : kinds[Math.floor(random() * kinds.length)]) as Kind
    const before = performance.now()
    const acknowledged = work.done.acknowledged
    for (const what of [...work.underWay, ...(await tasksAtWork(stack.superUrl)).names]) during[what] = (during[what] ?? 0) + 1
    if (!(await breakIt(stack, kind, random))) problems.push(`fault ${done + 1}: no ${kind} was there to break`)
    // What it takes to fill a disk, to turn a clock or to start everything is not the app's time to come back.
    const seconds = await untilBack(stack, work, ['disk', 'clock'].includes(kind) ? performance.now() : before)
    if (seconds === undefined) problems.push(`fault ${done + 1} (${kind}): not back within ${PATIENCE_S} s`)
    // Without its database nothing can be asked any more: what was seen until here is the result.
    if (seconds === undefined && stack.pids('postgres').length === 0)
      throw new Error(`${problems.join('; ')}; and PostgreSQL is gone, so the run ends here`)
    silentS = Math.max(silentS, (await tasksAtWork(stack.superUrl)).silentS)
    const stands = (done + 1) % REST_AFTER === 0 ? await untilTakenUp(stack) : undefined
    if (stands) problems.push(`fault ${done + 1} (${kind}): ${stands}`)
    const { times, longestS, acknowledged: until } = found[kind] ?? { times: 0, longestS: 0, acknowledged: 0 }
    found[kind] = {
      times: times + 1,
      longestS: Math.max(longestS, Number((seconds ?? PATIENCE_S).toFixed(1))),
      acknowledged: until + work.done.acknowledged - acknowledged,
    }
    say(`fault ${done + 1}: ${kind}, back after ${seconds?.toFixed(1) ?? `more than ${PATIENCE_S}`} s`)
    if (kind === 'start') say(`  it did, by its own seconds: ${stack.phases}`)
  }
  if (done < count) problems.push(`only ${done} of ${count} faults in ${minutes} minutes`)
  await work.end()
  const { lost, twice, broken, importsS } = await findBroken(stack.superUrl, work.done)
  problems.push(...lost, ...twice, ...broken, ...[...new Set(work.done.strange)].map((one) => `answered ${one}`))
  const stop = await stack.stop()
  if (stop.left) problems.push(`${stop.left} processes were left behind when npm start had stopped`)
  const { acknowledged, imports, closed, accepted, refits, statuses, refused } = work.done
  for (const problem of problems) say(`PROBLEM: ${problem}`)
  if (problems.length) say(`the logs are kept in ${stack.keepLogs()}`)
  for (const [kind, { times, longestS, acknowledged: so }] of Object.entries(found))
    say(
      `${kind.padEnd(10)} ${String(times).padStart(4)} times, up again after ${longestS} s at the most, ${so} commands acknowledged meanwhile`,
    )
  say(
    `${done} faults, ${acknowledged} commands acknowledged: ${lost.length} lost, ${twice.length} twice, ${broken.length} invariants broken`,
  )
  if (problems.length) process.exitCode = 1
  return {
    ...{ seed, faults: done, found, during, acknowledged, lost: lost.length, twice: twice.length, broken: broken.length },
    ...{ imports: imports.length, closedOut: closed.length, plansAccepted: accepted.length, refits, refused: refused.length },
    ...{ silentS: Math.round(silentS), importsS: Math.round(importsS), stopS: Number(stop.seconds.toFixed(1)), statuses, problems },
  }
}
