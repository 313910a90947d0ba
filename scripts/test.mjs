// `npm test`: everything. `npm test unit [files]` runs vitest alone, `npm test browser [files]` the browser tests alone.
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
// Each test file that speaks with the database starts a process that loads the same libraries: compiled once, they are read from here.
process.env.NODE_COMPILE_CACHE ??= path.join(root, 'node_modules/.cache/node-compile')
const counts = []

/** A step that counts as one test. Resolves to what it made, or undefined when it failed; later stages still run. */
async function step(name, work) {
  say(`${name} …`)
  try {
    const made = await work()
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

async function mustPass(tool, args) {
  const { status } = await runTool(tool, args, { show: true, env: { FORCE_COLOR: process.stdout.isTTY ? '1' : '0' } })
  if (status !== 0) throw new PlainError(`${tool} found problems; they stand above`)
}

async function lintAndTypes() {
  await step('format and lint', () => mustPass('biome', ['ci', '--diagnostic-level=warn', '.']))
  await step('arrows between the packages', () => mustPass('node', ['scripts/lint-arrows.mjs']))
  await step('no unused file, export or dependency', () =>
    mustPass('knip', ['--config', 'scripts/lint/knip.jsonc', '--no-progress', '--no-config-hints']),
  )
  await step('types of packages, worker and tests', () => mustPass('tsc', ['--noEmit', '-p', 'tsconfig.json']))
  await step('types of web', () => mustPass('turbo', ['run', 'types', '--output-logs=errors-only']))
}

async function unitTests() {
  say('unit, reference, isolation and tooling tests …')
  const file = path.join(results, 'vitest.json')
  const reports = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const { status } = await runTool('vitest', ['run', '--config', 'tests/vitest.config.ts', ...reports, ...filters], { show: true })
  counts.push(countVitest(file, status === 0))
}

async function browserTests() {
  const browser = await step('a browser', () => ensureBrowser(say))
  if (!browser) return
  say(`browser: ${browser.from}`)
  const app = await step('production build and demo, served', () => openApp({ name: 'test', volatile: true, logPrefix: 'test-' }))
  if (!app) return
  try {
    say('browser tests …')
    const env = {
      ...app.env,
      BASE_URL: app.baseUrl,
      DEMO_SIGN_INS: JSON.stringify(app.signIns),
      CHROMIUM_PATH: browser.executablePath ?? '',
    }
    const { status } = await runTool('playwright', ['test', '--config', 'tests/playwright.config.ts', ...filters], { show: true, env })
    counts.push(countPlaywright(path.join(results, 'browser.json'), status === 0))
  } finally {
    await app.close()
  }
}

void onStop()
const wants = (stage) => only === undefined || only === stage
try {
  if (only && !['unit', 'browser'].includes(only)) throw new PlainError('Say npm test, npm test unit [files], or npm test browser [files].')
  fs.rmSync(results, { recursive: true, force: true })
  fs.mkdirSync(results, { recursive: true })
  await generateClient()
  if (wants('lint')) await lintAndTypes()
  if (wants('unit')) await unitTests()
  if (wants('browser')) await browserTests()
} catch (error) {
  if (!stopSignal.aborted) console.error(plainSentence(error) ?? error)
  counts.push({ passed: 0, failed: 1, skipped: 0 })
}
if (stopSignal.aborted) say('stopped before the end')
say('done')
console.log(closingLine(counts))
process.exit(counts.some((count) => count.failed > 0) || counts.length === 0 ? 1 : 0)
