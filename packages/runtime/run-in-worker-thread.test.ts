import { monitorEventLoopDelay } from 'node:perf_hooks'
import { describe, expect, test } from 'vitest'
import { inLane, inTurn } from './aside-turns.ts'
import { AsideOverrun, runInWorkerThread } from './run-in-worker-thread.ts'

const ASIDE = { module: './tests/support/asides/endless-aside.ts', companyId: 'a', seconds: 50, memoryMb: 100 }
const MODULE = ASIDE.module

describe('work aside', () => {
  test('answers in pieces and at its end, as plain data', async () => {
    const pieces: unknown[] = []
    const answer = await runInWorkerThread(ASIDE, 'pieces', (piece) => pieces.push(piece))
    expect(answer).toEqual(new Map([['sum', 6]]))
    expect(pieces).toEqual([[1, 2], [3]])
  })

  test('that never ends is stopped at its time, and holds up nobody meanwhile', async () => {
    const delay = monitorEventLoopDelay({ resolution: 5 })
    delay.enable()
    await expect(runInWorkerThread({ ...ASIDE, seconds: 2 }, 'for ever')).rejects.toMatchObject({ name: 'AsideOverrun', limit: 'time' })
    delay.disable()
    expect(delay.max / 1e6).toBeLessThan(1000)
  })

  test.each(['heap', 'buffers'])('that fills the memory with %s is stopped at its limit', async (how) => {
    await expect(runInWorkerThread(ASIDE, how)).rejects.toEqual(new AsideOverrun('memory', ASIDE))
  })

  test('that fails or ends says so', async () => {
    await expect(runInWorkerThread(ASIDE, 'throw')).rejects.toThrow('one and one are three')
    await expect(runInWorkerThread(ASIDE, 'die')).rejects.toThrow(`${MODULE} ended without an answer (3)`)
  })

  test('knows no setting of the process that asked', async () => {
    process.env.DATABASE_URL ??= 'postgresql://somewhere'
    const known = await runInWorkerThread<string[]>(ASIDE, 'environment')
    expect(known).toContain('PATH')
    expect(known.filter((name) => /URL|SECRET|PASSWORD/.test(name))).toEqual([])
  })
})

describe('turns', () => {
  test('go to each firm in turn: at most two at once, one of a firm', async () => {
    const begun: string[] = []
    const ends: (() => void)[] = []
    const ask = (companyId: string) =>
      inTurn('kind', companyId, () => {
        begun.push(companyId)
        return new Promise<void>((resolve) => ends.push(resolve))
      })
    const asked = ['a', 'a', 'a', 'b', 'b', 'c'].map(ask)
    const settle = () => new Promise((resolve) => setImmediate(resolve))
    await settle()
    expect(begun).toEqual(['a', 'b'])
    expect(['a', 'b', 'c'].map((one) => inLane('kind', one))).toEqual([3, 2, 1])
    for (let end = ends.shift(); end; end = ends.shift()) {
      end()
      await settle()
    }
    // c has had no turn; then a's last lies longer back than b's; then b, for a is under way.
    expect(begun).toEqual(['a', 'b', 'c', 'a', 'b', 'a'])
    await Promise.all(asked)
    expect(inLane('kind', 'a')).toBe(0)
  })
})
