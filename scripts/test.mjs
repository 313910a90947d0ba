// `npm test`: everything. `npm test unit [files]` runs vitest alone, `npm test browser [files]` the browser tests alone, `npm test faults` the ten
// faults alone.
import fs from 'node:fs'
import path from 'node:path'
import { ensureBrowser } from './browser.mjs'
import { openApp } from './support/browser-stage.mjs'
import { generateClient, runTool } from './support/build.mjs'
import { root } from './support/paths.mjs'
import { PlainError, plainSentence, say } from './support/say.mjs'
import { onStop, stopSignal } from './support/stop-signal.mjs'
import { closingLine, countPlaywright, countVitest } from './support/test-counts.mjs'

const [only, ...filters] = process.argv.slice(2)
const results = path.join(root, 'test-results')
// What the demo's loader sets for itself in this process is not for the tests beside it.
const own = { ...process.env }
const counts = []
const took = []

/** How long a part took, for the list at the end: parts that run beside each other share two cores. */
async function timed(name, work) {
  const begun = Date.now()
  try {
    return await work()
  } finally {
    took.push({ name, begun, ended: Date.now() })
  }
}

/** A step that counts as one test. Resolves to what it made, or undefined when it failed; later stages still run. */
async function step(name, work) {
  say(`${name} …`)
  try {
    const made = await timed(name, work)
    counts.push({ passed: 1, failed: 0, skipped: 0 })
    return made ?? true
  } catch (error) {
    stopSignal.throwIfAborted()
    console.error(plainSentence(error) ?? error)
    say(`${name}: FAILED`)
    counts.push({ passed: 0, failed: 1, skipped: 0 })
    return undefined
  }
}

const color = { FORCE_COLOR: process.stdout.isTTY ? '1' : '0' }

/** Runs a tool whose words are printed whole when it ends, for others run beside it; or as they come, with `show`. */
async function mustPass(tool, args, { show = false } = {}) {
  const { status, words } = await runTool(tool, args, { base: own, env: color, show })
  if (words.trim() && !show) console.log(words.trim())
  if (status !== 0) throw new PlainError(`${tool} found problems; they stand above`)
}

const CHECKS = [
  ['types', 'tsc', ['--noEmit', '-p', 'tsconfig.json']],
  ['format and lint', 'biome', ['ci', '--diagnostic-level=warn', '.']],
  ['arrows between the packages', 'node', ['scripts/lint-arrows.mjs']],
  ['no unused file, export or dependency', 'knip', ['--config', 'scripts/lint/knip.jsonc', '--no-progress', '--no-config-hints']],
]

const lintAndTypes = () => Promise.all(CHECKS.map(([name, tool, args]) => step(name, () => mustPass(tool, args))))

/** Beside the browser tests, which wait for pages half of their time, they fill the other half: in the background, and their words come whole at their end. */
async function unitTests({ beside }) {
  say('unit, reference, isolation and tooling tests …')
  const file = path.join(results, 'vitest.json')
  const reports = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const args = ['run', '--config', 'tests/vitest.config.ts', ...reports, ...filters]
  const { status, words } = await timed('unit tests', () => runTool('vitest', args, { base: own, show: !beside, giveWay: beside }))
  if (beside) console.log(words.trim())
  counts.push(countVitest(file, status === 0))
}

/** Begun at once: build and demo take a minute in which something else may be done. A cluster of its own: tests beside it change roles. */
const openBrowserApp = () =>
  step('production build and demo, served', () => openApp({ name: 'browser', volatile: true, logPrefix: 'test-' }))

async function browserTests(opening) {
  const browser = await step('a browser', () => ensureBrowser(say))
  const app = await opening
  if (!browser || !app) return
  say(`browser tests in ${browser.from} …`)
  const env = {
    ...app.env,
    BASE_URL: app.baseUrl,
    DEMO_SIGN_INS: JSON.stringify(app.signIns),
    CHROMIUM_PATH: browser.executablePath ?? '',
  }
  const args = ['test', '--config', 'tests/playwright.config.ts', ...filters]
  const { status } = await timed('browser tests', () => runTool('playwright', args, { show: true, env }))
  counts.push(countPlaywright(path.join(results, 'browser.json'), status === 0))
}

/** A line a part, in the order they began. */
function sayTimes() {
  const seconds = ({ begun, ended }) => `${((ended - begun) / 1000).toFixed(0).padStart(5)} s`
  for (const part of took.sort((a, b) => a.begun - b.begun)) console.error(`${seconds(part)}  ${part.name}`)
}

/** Breaks a whole `npm start` of its own ten times, and looks for what was lost: `scripts/bench/faults.ts`, which finds processes as Linux shows them. */
async function faultTests() {
  if (process.platform !== 'linux') return say('ten faults: left out, for they need Linux')
  await step('ten faults', () =>
    mustPass('node', ['scripts/bench.mjs', 'faults', '--count', '10', '--minutes', '10', '--seed', '1'], { show: true }),
  )
}

void onStop()
const wants = (stage) => only === undefined || only === stage
let opening
const closeApp = async () => (await opening?.catch(() => undefined))?.close()
try {
  if (only && !['unit', 'browser', 'faults'].includes(only))
    throw new PlainError('Say npm test, npm test unit [files], npm test browser [files], or npm test faults.')
  fs.rmSync(results, { recursive: true, force: true })
  fs.mkdirSync(results, { recursive: true })
  await generateClient()
  if (wants('browser')) opening = openBrowserApp()
  opening?.catch(() => {}) // told where it is waited for
  if (wants('lint')) await lintAndTypes()
  await Promise.all([wants('unit') && unitTests({ beside: wants('browser') }), wants('browser') && browserTests(opening)])
  // By itself, at the end: it measures how soon everything is up again.
  if (wants('faults')) {
    await closeApp()
    await faultTests()
  }
} catch (error) {
  if (!stopSignal.aborted) console.error(plainSentence(error) ?? error)
  counts.push({ passed: 0, failed: 1, skipped: 0 })
} finally {
  await closeApp()
}
if (stopSignal.aborted) say('stopped before the end')
sayTimes()
say('done')
console.log(closingLine(counts))
process.exit(counts.some((count) => count.failed > 0) || counts.length === 0 ? 1 : 0)
