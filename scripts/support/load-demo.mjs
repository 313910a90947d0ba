// Loads the demo companies when the database holds none, through the demo's own loader.
import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { randomSecret, writePrivate } from './cluster-secrets.mjs'
import { dataDir, root } from './paths.mjs'
import { PlainError } from './say.mjs'

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

/** Whether the demo is wanted: by itself in the embedded database only, in the operator's own when it was asked for outright. */
export function wantsDemo({ embedded }) {
  const { DEMO } = process.env
  if (DEMO && DEMO !== 'on' && DEMO !== 'off') throw new PlainError(`DEMO must be on or off; it is "${DEMO}".`)
  return DEMO ? DEMO === 'on' : embedded
}

/** Loads the demo, each company as of its own day, when no company exists. Returns whether it did. */
export async function loadDemoWhenEmpty(environment, log) {
  const { MIGRATION_DATABASE_URL } = environment.urls
  if ((await query(MIGRATION_DATABASE_URL, 'SELECT 1 FROM company LIMIT 1')).length) return false
  log('loading the demo companies')
  Object.assign(process.env, environment.env) // the loader uses the project's own packages, which read the environment
  const { loadDemo } = await import(demoFile('load-demo.ts'))
  try {
    return await loadDemo({ migrationUrl: MIGRATION_DATABASE_URL, log })
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

/**
 * The demo's people that this database knows, with their passwords: { role, name, email, company, password }. Passwords are made here, at set-up, and kept in
 * `file` for the owner's eyes only; whoever has none there (their database came from an earlier release or another place) gets a new one.
 */
export async function demoSignIns(environment, file = path.join(dataDir, 'demo-passwords.json')) {
  const { DEMO_SIGN_INS } = await import(demoFile('sign-ins.ts'))
  const people = await query(environment.urls.IDENTITY_DATABASE_URL, 'SELECT id, email FROM person WHERE email = ANY($1)', [
    DEMO_SIGN_INS.map((signIn) => signIn.email),
  ])
  if (people.length === 0) return []
  const known = file && fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : {}
  const fresh = people.filter(({ id }) => !known[id]).map(({ id }) => ({ personId: id, password: randomSecret().slice(0, 16) }))
  if (fresh.length) {
    for (const { personId, password } of fresh) known[personId] = password
    if (file) writePrivate(file, `${JSON.stringify(known, null, 2)}\n`) // first: a kill in between must not leave passwords that nobody knows
    Object.assign(process.env, environment.env)
    const { setPasswords } = await import('@almanac/identity/people')
    try {
      await setPasswords(fresh)
    } finally {
      await closeOwnConnections()
    }
  }
  return DEMO_SIGN_INS.flatMap((signIn) => {
    const person = people.find(({ email }) => email === signIn.email)
    return person ? [{ ...signIn, password: known[person.id] }] : []
  })
}
