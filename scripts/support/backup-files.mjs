import fs from 'node:fs'
import { copyFile } from 'node:fs/promises'
import path from 'node:path'

// What the documentation of a base backup leaves out: the running server's own state, and what is made anew at start.
const leftOut = new Set(['postmaster.pid', 'postmaster.opts', 'pg_internal.init'])
const emptied = new Set(['pg_wal', 'pg_dynshmem', 'pg_notify', 'pg_replslot', 'pg_serial', 'pg_snapshots', 'pg_stat_tmp', 'pg_subtrans'])

/** Copies a folder; what the server removes meanwhile (a dropped table, a temporary file) is passed over: the log tells of it. */
async function copyFolder(from, to, top) {
  fs.mkdirSync(to, { recursive: true, mode: 0o700 })
  for (const entry of fs.readdirSync(from, { withFileTypes: true })) {
    const source = path.join(from, entry.name)
    const target = path.join(to, entry.name)
    if (leftOut.has(entry.name) || entry.name.startsWith('pgsql_tmp')) continue
    if (entry.isDirectory()) {
      if (top && emptied.has(entry.name)) fs.mkdirSync(target, { mode: 0o700 })
      else await copyFolder(source, target, false)
      continue
    }
    try {
      await copyFile(source, target, fs.constants.COPYFILE_FICLONE)
    } catch (error) {
      if (error.code !== 'ENOENT') throw error
    }
  }
}

/** Copies the data files of a running cluster, the control file last: it must not be older than they are. */
export async function copyDataFiles(data, target) {
  await copyFolder(data, target, true)
  fs.copyFileSync(path.join(data, 'global/pg_control'), path.join(target, 'global/pg_control'))
  for (const sub of ['archive_status', 'summaries']) fs.mkdirSync(path.join(target, 'pg_wal', sub), { recursive: true, mode: 0o700 })
}

/** Copies the write-ahead log from the file `first` to the file `last`, both included. */
export function copyLog(data, target, first, last) {
  const segments = fs.readdirSync(path.join(data, 'pg_wal')).filter((name) => /^[0-9A-F]{24}$/.test(name) && name >= first && name <= last)
  if (!segments.includes(first) || !segments.includes(last)) throw new Error('the write-ahead log of the backup is not complete')
  for (const name of segments) fs.copyFileSync(path.join(data, 'pg_wal', name), path.join(target, 'pg_wal', name))
}

/** Copies a backup's data to where a server shall run on it, for the user as whom it runs: { uid, gid }, or {} for ourselves. */
export function putInPlace(from, to, as) {
  const half = `${to}.half`
  fs.rmSync(half, { recursive: true, force: true })
  fs.cpSync(from, half, { recursive: true })
  const own = (place) => {
    fs.chmodSync(place, fs.statSync(place).isDirectory() ? 0o700 : 0o600)
    if (as.uid !== undefined) fs.chownSync(place, as.uid, as.gid)
  }
  own(half)
  for (const entry of fs.readdirSync(half, { recursive: true })) own(path.join(half, entry))
  fs.renameSync(half, to)
}
