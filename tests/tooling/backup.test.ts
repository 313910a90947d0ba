import { spawnSync } from 'node:child_process'
import path from 'node:path'
import { expect, test } from 'vitest'

type Report = {
  atStart: number
  atEnd: number
  written: number
  one: { rows: number; different: number; last: number }
  byIndex: number
  two: { rows: number; last: number }
  purse: { total: number; first: number }
}

test('a backup taken while rows are written restores to one moment of that time, whole', () => {
  const run = spawnSync(process.execPath, [path.join(import.meta.dirname, 'backup-while-writing.mjs')], { encoding: 'utf8' })
  expect(run.stderr).toBe('')
  const { atStart, atEnd, written, one, byIndex, two, purse } = JSON.parse(run.stdout) as Report
  // Rows were written before, during and after the copy, or this test would show nothing.
  expect(atStart).toBeGreaterThan(0)
  expect(atEnd).toBeGreaterThan(atStart)
  expect(written).toBeGreaterThan(atEnd)
  // All that was committed when the backup began is there, and nothing from after its end.
  expect(one.last).toBeGreaterThanOrEqual(atStart)
  expect(one.last).toBeLessThanOrEqual(atEnd + 1)
  // Each transaction is there whole or not at all, in tables and index alike.
  expect(one).toMatchObject({ rows: one.last * 50, different: one.last })
  expect(byIndex).toBe(one.rows)
  expect(two).toEqual({ rows: one.rows, last: one.last })
  expect(purse).toEqual({ total: 1000, first: 1000 - one.last })
})
