// Finds a Chromium for the browser tests, getting one if it must.
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { dataDir, root } from './support/paths.mjs'
import { PlainError } from './support/say.mjs'

const require = createRequire(path.join(root, 'package.json'))
const packagedVersion = '153.0.0' // of @sparticuz/chromium, which carries the browser inside the npm package

const run = (program, args, options = {}) =>
  spawnSync(program, args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    shell: process.platform === 'win32',
    ...options,
  })
const works = (file) => run(file, ['--version'], { shell: false }).status === 0
const onPath = (name) => run('sh', ['-c', `command -v ${name}`]).stdout?.trim()

function installedBySystem() {
  const { PROGRAMFILES = 'C:\\Program Files' } = process.env
  const usual = {
    linux: ['chromium', 'google-chrome', 'google-chrome-stable', 'chromium-browser'].map(onPath),
    darwin: ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', '/Applications/Chromium.app/Contents/MacOS/Chromium'],
    win32: [path.join(PROGRAMFILES, 'Google/Chrome/Application/chrome.exe')],
  }[process.platform]
  return usual?.find((file) => file && fs.existsSync(file))
}

async function fromNpmPackage() {
  // Not `browser`: that is where the database of the browser tests stands, and it is being made at the same time.
  const dir = path.join(dataDir, 'fetched-browser')
  fs.mkdirSync(dir, { recursive: true })
  fs.writeFileSync(path.join(dir, 'package.json'), '{"private":true}')
  const name = '@sparticuz/chromium'
  if (!fs.existsSync(path.join(dir, 'node_modules', name)))
    if (run('npm', ['install', '--prefix', dir, '--no-audit', '--no-fund', `${name}@${packagedVersion}`]).status !== 0) return undefined
  // Without the system's NSS, have it unpack and use the libraries that it carries (it sets LD_LIBRARY_PATH).
  if (!run('/sbin/ldconfig', ['-p']).stdout?.includes('libnss3.so')) process.env.AWS_LAMBDA_JS_RUNTIME ??= 'nodejs22.x'
  const { default: chromium } = await import(createRequire(path.join(dir, 'package.json')).resolve(name))
  return chromium.executablePath()
}

function fromDebian() {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  run('sh', ['-c', 'apt-get update -qq && apt-get install -y -qq --no-install-recommends chromium'], { env })
  return onPath('chromium')
}

/** Resolves to { from, executablePath }, without a path for Playwright's own; throws one sentence when there is none to be had. */
export async function ensureBrowser(log) {
  if (process.env.CHROMIUM_PATH) {
    if (works(process.env.CHROMIUM_PATH)) return { from: 'CHROMIUM_PATH', executablePath: process.env.CHROMIUM_PATH }
    throw new PlainError(`CHROMIUM_PATH names ${process.env.CHROMIUM_PATH}, which does not run.`)
  }
  const { chromium } = require('@playwright/test')
  if (fs.existsSync(chromium.executablePath())) return { from: "Playwright's own" }
  const system = installedBySystem()
  if (system) return { from: system, executablePath: system }

  log('no browser found: getting one (playwright install)')
  const cli = require.resolve('@playwright/test/cli')
  if (run(process.execPath, [cli, 'install', 'chromium']).status === 0 && fs.existsSync(chromium.executablePath()))
    return { from: 'playwright install' }
  if (process.platform === 'linux' && process.arch === 'x64') {
    log('its download site cannot be reached: getting the browser from an npm package')
    const executablePath = await fromNpmPackage()
    if (executablePath && works(executablePath)) return { from: '@sparticuz/chromium', executablePath }
  }
  if (process.getuid?.() === 0 && onPath('apt-get')) {
    log('getting the browser from the Debian packages')
    const executablePath = fromDebian()
    if (executablePath) return { from: 'apt-get', executablePath }
  }
  throw new PlainError('No Chromium for the browser tests was found or could be fetched: install one, or name it in CHROMIUM_PATH.')
}
