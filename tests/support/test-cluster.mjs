// Once for each run of vitest: a door to the embedded test cluster. The cluster starts when the first test file asks for a database
// (see test-database.ts), so that pure tests wait for nothing. A file's database lives as long as its connection to this door.
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import net from 'node:net'
import path from 'node:path'
import pg from 'pg'
import { startPostgres } from '../../scripts/postgres.mjs'
import { prepareDatabase } from '../../scripts/prepare-database.mjs'
import { databaseUrls, setUpRoles } from '../../scripts/set-up-roles.mjs'

const root = path.resolve(import.meta.dirname, '../..')
const LOCK = 7_261_010

/** Names the template after everything that shapes it, so that a changed migration makes a new one. */
function templateName() {
  const hash = createHash('sha256')
  const folders = ['prisma/migrations', 'packages/database/engine'].map((folder) => path.join(root, folder))
  const inside = (folder) => fs.readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
  const files = folders.flatMap(inside).map((entry) => path.join(entry.parentPath, entry.name))
  for (const file of [
    ...files.sort(),
    path.join(root, 'packages/runtime/queues.ts'),
    path.join(root, 'packages/database/catalogue.ts'),
    path.join(root, 'node_modules/pg-boss/package.json'),
  ])
    hash.update(path.relative(root, file)).update(fs.readFileSync(file))
  return `almanac_template_${hash.digest('hex').slice(0, 12)}`
}

/** Makes the migrated template unless it is there; tidies after killed runs when nobody else uses the cluster. */
async function ensureTemplate(cluster, admin, template) {
  const { rows } = await admin.query('SELECT datname FROM pg_database')
  const names = rows.map((row) => row.datname)
  const drop = (name) => admin.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`)
  if (cluster.users() === 1) for (const name of names) if (name.startsWith('almanac_') && name !== template) await drop(name)
  if (names.includes(template)) return
  const half = `${template}_half`
  await drop(half)
  await setUpRoles(cluster, half)
  await prepareDatabase(databaseUrls(cluster, half).MIGRATION_DATABASE_URL)
  await admin.query(`ALTER DATABASE ${half} RENAME TO ${template}`)
}

async function open() {
  const cluster = await startPostgres({ name: 'test', volatile: true })
  const admin = new pg.Pool({ connectionString: cluster.url('postgres', 'postgres'), max: 4 })
  admin.on('error', () => {})
  const template = templateName()
  const session = await admin.connect()
  try {
    await session.query('SELECT pg_advisory_lock($1)', [LOCK])
    await ensureTemplate(cluster, session, template)
  } finally {
    session.release(true) // ends the session, and with it the lock
  }
  return { cluster, admin, template }
}

async function serve(socket, cluster, admin, template, name) {
  await admin.query(`CREATE DATABASE ${name} TEMPLATE ${template} OWNER almanac_owner`)
  await admin.query(`REVOKE TEMPORARY ON DATABASE ${name} FROM PUBLIC`) // rights on a database are not cloned with it
  const { MIGRATION_DATABASE_URL, DATABASE_URL, IDENTITY_DATABASE_URL } = databaseUrls(cluster, name)
  const answer = { migrationUrl: MIGRATION_DATABASE_URL, appUrl: DATABASE_URL, identityUrl: IDENTITY_DATABASE_URL }
  socket.write(`${JSON.stringify({ ...answer, superUrl: cluster.url('postgres', name) })}\n`)
}

async function openDoor() {
  let opened
  const drops = new Set()
  let count = 0
  const server = net.createServer(async (socket) => {
    const name = `almanac_test_${process.pid}_${++count}`
    const gone = new Promise((resolve) => socket.once('close', resolve))
    socket.on('error', () => {})
    try {
      opened ??= open()
      const { cluster, admin, template } = await opened
      await serve(socket, cluster, admin, template, name)
      const dropped = gone.then(() => admin.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`))
      drops.add(dropped)
      void dropped.finally(() => drops.delete(dropped))
    } catch (error) {
      socket.end(`${JSON.stringify({ error: error.message ?? String(error) })}\n`)
    }
  })
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve))
  const close = async () => {
    server.close()
    if (!opened) return
    const { cluster, admin } = await opened
    await Promise.all(drops)
    await admin.end()
    await cluster.stop()
  }
  return { port: server.address().port, close }
}

// vitest runs this once for each of its projects, in one process: they share the door, and the last one closes it.
const shared = globalThis
shared.almanacDoor ??= { users: 0, door: undefined }

export default async function setup(project) {
  const state = shared.almanacDoor
  state.users++
  state.door ??= openDoor()
  const { port, close } = await state.door
  project.provide('testDatabasePort', port)
  return async () => {
    if (--state.users === 0) await close()
  }
}
