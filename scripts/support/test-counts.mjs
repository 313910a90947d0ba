// Counts every test of a run, from the test runners' own reports, and the steps around them.
import fs from 'node:fs'

const read = (file) => (fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : undefined)

/** What a runner that ended badly without saying which test failed counts as: one failure, never none. */
const atLeastOne = (counts, ok) => (!ok && counts.failed === 0 ? { ...counts, failed: 1 } : counts)

/** { passed, failed, skipped } of a vitest JSON report; a file that could not be read as tests is one failure. */
export function countVitest(file, ok) {
  const report = read(file)
  if (!report) return { passed: 0, failed: 1, skipped: 0 }
  const broken = report.testResults.filter((result) => result.status === 'failed' && result.assertionResults.length === 0).length
  const skipped = report.numPendingTests + report.numTodoTests
  return atLeastOne({ passed: report.numPassedTests, failed: report.numFailedTests + broken, skipped }, ok)
}

/** { passed, failed, skipped } of a Playwright JSON report; a test that passed only when tried again counts as failed. */
export function countPlaywright(file, ok) {
  const report = read(file)
  if (!report) return { passed: 0, failed: 1, skipped: 0 }
  const { expected, unexpected, flaky, skipped } = report.stats
  return atLeastOne({ passed: expected, failed: unexpected + flaky, skipped }, ok)
}

/** The closing line: `N passed, N failed`, and the skipped when there are any. */
export function closingLine(counts) {
  const sum = (key) => counts.reduce((total, count) => total + count[key], 0)
  const skipped = sum('skipped')
  return `${sum('passed')} passed, ${sum('failed')} failed${skipped ? `, ${skipped} skipped` : ''}`
}
