// Loads the demo companies when the database holds none, through the demo's own loader.
import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { root } from './paths.mjs'

const demoFile = (name) => path.join(root, 'prisma/demo', name)

async function query(url, sql, values) {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query(sql, values)).rows
  } finally {
    await client.end()
  }
}

/** Loads the demo as of today when no company exists. Returns whether it did. */
export async function loadDemoWhenEmpty(environment, log, anchorDay = new Date().toISOString().slice(0, 10)) {
  if (process.env.DEMO === 'off' || !fs.existsSync(demoFile('load-demo.ts'))) return false
  const { MIGRATION_DATABASE_URL } = environment.urls
  if ((await query(MIGRATION_DATABASE_URL, 'SELECT 1 FROM company LIMIT 1')).length) return false
  log('loading the demo companies')
  Object.assign(process.env, environment.env) // the loader uses the project's own packages, which read the environment
  const { loadDemo } = await import(demoFile('load-demo.ts'))
  try {
    return await loadDemo({ migrationUrl: MIGRATION_DATABASE_URL, anchorDay, log })
  } finally {
    await closeOwnConnections()
  }
}

/** The loader worked in this process through the project's packages: what they opened must not stay open while web and worker run. */
async function closeOwnConnections() {
  const { closeClients } = await import('@almanac/database/client')
  const { closeTaskQueue } = await import('@almanac/runtime/task-queue')
  await closeTaskQueue()
  await closeClients()
}

/** The demo's sign-ins that this database knows, for the closing lines of `start`. */
export async function demoSignIns(environment) {
  if (!fs.existsSync(demoFile('sign-ins.ts'))) return []
  const { DEMO_SIGN_INS } = await import(demoFile('sign-ins.ts'))
  const rows = await query(environment.urls.IDENTITY_DATABASE_URL, 'SELECT email FROM person WHERE email = ANY($1)', [
    DEMO_SIGN_INS.map((signIn) => signIn.email),
  ])
  const known = new Set(rows.map((row) => row.email))
  return DEMO_SIGN_INS.filter((signIn) => known.has(signIn.email))
}
