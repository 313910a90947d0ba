// `npm run bench -- <name> [options]` runs scripts/bench/<name>: its default export gets { args, say, openDatabase, openApp, later } and returns
// the figures, which stand in one JSON line at the end. What it opens is closed here.
import fs from 'node:fs'
import path from 'node:path'
import { freePort } from './support/free-port.mjs'
import { root } from './support/paths.mjs'
import { PlainError, say, tellError } from './support/say.mjs'
import { onStop } from './support/stop-signal.mjs'

const [name, ...args] = process.argv.slice(2)
const folder = path.join(root, 'scripts/bench')
const names = [...new Set(fs.readdirSync(folder).flatMap((file) => file.match(/^([a-z-]+)\.(mjs|ts)$/)?.[1] ?? []))]
const closes = []

/** The bench cluster is as safe, and so as slow, as the one that serves: the figures would mean little otherwise. */
const cluster = { name: 'bench', volatile: false }

async function openDatabase() {
  const { openFreshDatabase } = await import('./support/browser-stage.mjs')
  const database = await openFreshDatabase({ ...cluster, port: await freePort() })
  closes.push(database.close)
  Object.assign(process.env, database.env)
  return database
}

async function openApp({ demo = false, usualLimits = false } = {}) {
  const stage = await import('./support/browser-stage.mjs')
  const app = await stage.openApp({ ...cluster, demo, usualLimits, logPrefix: 'bench-' })
  closes.push(app.close)
  Object.assign(process.env, app.env)
  return app
}

const stopped = onStop()
try {
  if (!names.includes(name)) throw new PlainError(`Say which measurement: npm run bench -- ${names.join(' | ')}`)
  const file = ['.mjs', '.ts'].map((end) => path.join(folder, name + end)).find((candidate) => fs.existsSync(candidate))
  const { default: measure } = await import(file)
  const figures = await Promise.race([measure({ args, say, openDatabase, openApp, later: (close) => closes.push(close) }), stopped])
  if (figures && figures !== 'stop') console.log(JSON.stringify({ bench: name, ...figures }))
} catch (error) {
  tellError(error)
}
for (const close of closes.reverse()) await close().catch(tellError)
process.exit()
