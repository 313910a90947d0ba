// `node scripts/run.mjs backup <new folder>`: copies the embedded PostgreSQL's files while it runs and is written to.
//
// PostgreSQL's own way without its client programs (documentation, "Making a Base Backup Using the Low Level API"): between
// pg_backup_start and pg_backup_stop the data files are copied as they are, however torn; the write-ahead log of that time, which a
// replication slot holds back, mends them when the copy first starts.
import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { startPostgres } from './postgres.mjs'
import { copyDataFiles, copyLog } from './support/backup-files.mjs'
import { writePrivate } from './support/cluster-secrets.mjs'
import { freeMb } from './support/disk-space.mjs'
import { dataDir } from './support/paths.mjs'
import { PlainError, say, tellError } from './support/say.mjs'

async function checkSpace(client, target) {
  const { rows } = await client.query('SELECT sum(pg_database_size(oid))::float8 / 1e6 AS mb FROM pg_database')
  const needed = Math.ceil(rows[0].mb + 300)
  const free = freeMb(target)
  if (free < needed) throw new PlainError(`Not enough disk space for the backup: ${needed} MB are needed and ${free} MB are free.`)
}

/** Copies the running cluster `data` to `target`/data through one session, which must stay open between start and stop. */
export async function backUp(client, data, target) {
  const slot = `backup_${process.pid}`
  await client.query('SELECT pg_create_physical_replication_slot($1, true, true)', [slot]) // temporary: gone with the session
  const began = await client.query(`SELECT pg_walfile_name(pg_backup_start('copy', fast => true)) AS file`)
  await copyDataFiles(data, target)
  const ended = await client.query(
    'SELECT pg_walfile_name(lsn) AS file, labelfile, spcmapfile FROM pg_backup_stop(wait_for_archive => false)',
  )
  const [{ file: last, labelfile, spcmapfile }] = ended.rows
  copyLog(data, target, began.rows[0].file, last)
  fs.writeFileSync(path.join(target, 'backup_label'), labelfile)
  if (spcmapfile?.trim()) fs.writeFileSync(path.join(target, 'tablespace_map'), spcmapfile)
}

async function run(folder) {
  if (!folder) throw new PlainError('Say where to: node scripts/run.mjs backup <new folder>')
  if (process.env.DATABASE_URL)
    throw new PlainError(
      'DATABASE_URL is given: back up your own PostgreSQL with pg_dump or pg_basebackup. This command is for the embedded one.',
    )
  const target = path.resolve(folder)
  if (fs.existsSync(target) && fs.readdirSync(target).length) throw new PlainError(`${target} is not empty: name a new folder.`)
  const cluster = await startPostgres({ name: 'postgres' })
  const client = new pg.Client({ connectionString: cluster.url('postgres', 'postgres') })
  try {
    await client.connect()
    await checkSpace(client, target)
    const half = `${target}.half`
    fs.rmSync(half, { recursive: true, force: true })
    fs.mkdirSync(half, { recursive: true, mode: 0o700 })
    await backUp(client, cluster.data, path.join(half, 'data'))
    // What goes with the database: the passwords of its logins and the secret that signs sessions.
    writePrivate(path.join(half, 'passwords.json'), `${JSON.stringify(cluster.passwords, null, 2)}\n`)
    const secret = path.join(dataDir, 'secret')
    if (fs.existsSync(secret)) writePrivate(path.join(half, 'secret'), fs.readFileSync(secret, 'utf8'))
    // Photographs last: a picture that a record names was in its place before the record said so.
    const files = path.join(dataDir, 'files')
    if (fs.existsSync(files)) fs.cpSync(files, path.join(half, 'files'), { recursive: true, filter: (name) => !name.endsWith('.half') })
    fs.rmSync(target, { recursive: true, force: true })
    fs.renameSync(half, target)
    say(`backed up to ${target}; keep it private, it holds passwords`)
  } finally {
    await client.end()
    await cluster.stop()
  }
}

if (process.argv[1] === import.meta.filename) {
  await run(process.argv[2]).catch(tellError)
  process.exit()
}
