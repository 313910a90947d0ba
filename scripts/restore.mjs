// `node scripts/run.mjs restore <folder>`: puts a backup in the place of the embedded PostgreSQL's files. What was there is set aside.
import fs from 'node:fs'
import path from 'node:path'
import { startPostgres } from './postgres.mjs'
import { putInPlace } from './support/backup-files.mjs'
import { clusterPlace } from './support/cluster-place.mjs'
import { writePrivate } from './support/cluster-secrets.mjs'
import { releaseLock, tryLock } from './support/file-lock.mjs'
import { countLeases } from './support/leases.mjs'
import { dataDir } from './support/paths.mjs'
import { PlainError, say, tellError } from './support/say.mjs'

const name = 'postgres'

async function run(folder) {
  const source = folder && path.resolve(folder)
  if (!source || !fs.existsSync(path.join(source, 'data/PG_VERSION')))
    throw new PlainError('Say which backup: node scripts/run.mjs restore <folder of a backup>')
  const { home, as } = await clusterPlace()
  const data = path.join(home, name)
  const lockFile = path.join(home, `${name}.lock`)
  if (tryLock(lockFile)) throw new PlainError('The database is being started or stopped: try again in a moment.')
  try {
    if (countLeases(path.join(home, `${name}.users`)) > 0 || fs.existsSync(path.join(data, 'postmaster.pid')))
      throw new PlainError('The database is in use: stop Rebed Almanac first (Ctrl-C), then restore.')
    const aside = `${data}.before-restore-${new Date().toISOString().replaceAll(/[:.]/g, '-')}`
    const passwords = path.join(home, `${name}.passwords.json`)
    if (fs.existsSync(data)) {
      fs.renameSync(data, aside)
      if (fs.existsSync(passwords)) fs.copyFileSync(passwords, path.join(aside, 'passwords.json'))
      say(`the database that was here is set aside in ${aside}`)
    }
    putInPlace(path.join(source, 'data'), data, as)
    writePrivate(passwords, fs.readFileSync(path.join(source, 'passwords.json'), 'utf8'))
    const secret = path.join(source, 'secret')
    if (fs.existsSync(secret)) writePrivate(path.join(dataDir, 'secret'), fs.readFileSync(secret, 'utf8'))
    // Beside those that are here: each is named by its record's id, so none takes another's place.
    const files = path.join(source, 'files')
    if (fs.existsSync(files)) fs.cpSync(files, path.join(dataDir, 'files'), { recursive: true })
  } finally {
    releaseLock(lockFile)
  }
  const cluster = await startPostgres({ name }) // replays the log of the backup, and so proves that it can be used
  await cluster.stop()
  say('restored; npm start serves it')
}

await run(process.argv[2]).catch(tellError)
process.exit()
