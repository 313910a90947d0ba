// Loads the demo companies when the database holds none, through the demo's own loader.
import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { root } from './paths.mjs'

const demoFile = (name) => path.join(root, 'prisma/demo', name)

async function isEmpty(url) {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    const { rowCount } = await client.query('SELECT FROM company LIMIT 1')
    return rowCount === 0
  } finally {
    await client.end()
  }
}

/** Loads the demo as of today when no company exists. Returns whether it did. */
export async function loadDemoWhenEmpty(environment, log) {
  if (process.env.DEMO === 'off' || !fs.existsSync(demoFile('load-demo.ts'))) return false
  const { MIGRATION_DATABASE_URL, DATABASE_URL, IDENTITY_DATABASE_URL } = environment.urls
  if (!(await isEmpty(MIGRATION_DATABASE_URL))) return false
  Object.assign(process.env, environment.env) // the loader uses the project's own packages, which read the environment
  const { loadDemo, default: byDefault } = await import(demoFile('load-demo.ts'))
  await (loadDemo ?? byDefault)({
    migrationUrl: MIGRATION_DATABASE_URL,
    appUrl: DATABASE_URL,
    identityUrl: IDENTITY_DATABASE_URL,
    anchorDay: new Date().toISOString().slice(0, 10),
    log,
  })
  return true
}

/** The demo's sign-ins, for the closing lines of `start`. */
export async function demoSignIns() {
  if (process.env.DEMO === 'off' || !fs.existsSync(demoFile('sign-ins.ts'))) return []
  return (await import(demoFile('sign-ins.ts'))).DEMO_SIGN_INS
}
