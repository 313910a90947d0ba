import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'

type Counts = { passed: number; failed: number; skipped: number }
const module = path.resolve(import.meta.dirname, '../../scripts/support/test-counts.mjs')
const { closingLine, countPlaywright, countVitest } = (await import(module)) as {
  closingLine: (counts: Counts[]) => string
  countPlaywright: (file: string, ok: boolean) => Counts
  countVitest: (file: string, ok: boolean) => Counts
}

const dir = fs.mkdtempSync(path.join(os.tmpdir(), 'counts-'))
afterAll(() => fs.rmSync(dir, { recursive: true }))
function report(content: unknown): string {
  const file = path.join(dir, `${Math.random()}.json`)
  fs.writeFileSync(file, JSON.stringify(content))
  return file
}

describe('vitest', () => {
  const base = { numPassedTests: 7, numFailedTests: 0, numPendingTests: 2, numTodoTests: 1, testResults: [] }
  test('counts passed, failed and skipped', () => {
    expect(countVitest(report({ ...base, numFailedTests: 3 }), false)).toEqual({ passed: 7, failed: 3, skipped: 3 })
  })
  test('a file that cannot be read as tests is a failure', () => {
    const testResults = [{ status: 'failed', assertionResults: [] }]
    expect(countVitest(report({ ...base, testResults }), false).failed).toBe(1)
  })
  test('a bad end without a failed test is a failure', () => expect(countVitest(report(base), false).failed).toBe(1))
  test('no report at all is a failure', () => expect(countVitest(path.join(dir, 'none.json'), true).failed).toBe(1))
})

describe('Playwright', () => {
  test('a test that passed only when tried again counts as failed', () => {
    const stats = { expected: 4, unexpected: 1, flaky: 1, skipped: 0 }
    expect(countPlaywright(report({ stats }), false)).toEqual({ passed: 4, failed: 2, skipped: 0 })
  })
  test('no test found is a failure, not a success', () => {
    const stats = { expected: 0, unexpected: 0, flaky: 0, skipped: 0 }
    expect(countPlaywright(report({ stats }), false).failed).toBe(1)
  })
})

test('the closing line names the skipped only when there are any', () => {
  expect(closingLine([{ passed: 2, failed: 0, skipped: 0 }])).toBe('2 passed, 0 failed')
  expect(
    closingLine([
      { passed: 2, failed: 1, skipped: 0 },
      { passed: 1, failed: 0, skipped: 4 },
    ]),
  ).toBe('3 passed, 1 failed, 4 skipped')
})
