import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { needDiskSpace } from './disk-space.mjs'
import { PlainError } from './say.mjs'

function run(program, args, as, input) {
  const r = spawnSync(program, args, { ...as, cwd: os.tmpdir(), input, encoding: 'utf8' })
  if (r.error) throw r.error
  if (r.status !== 0)
    throw new PlainError(
      /no space left/i.test(r.stderr)
        ? 'The disk is full: no database could be made. Free some space and run this again.'
        : r.stderr.trim(),
    )
}

/** Makes a cluster in `data`. It is made aside and renamed, so that a kill midway leaves no half cluster behind. */
export function makeCluster({ initdb, as, data, password, volatile }) {
  needDiskSpace(path.dirname(data), volatile ? 400 : 600, 'a database')
  const half = `${data}.new`
  fs.rmSync(half, { recursive: true, force: true })
  fs.mkdirSync(half, { mode: 0o700 })
  const passwordFile = path.join(os.tmpdir(), `rebed-almanac-${process.pid}`)
  fs.writeFileSync(passwordFile, password, { mode: 0o600, flag: 'wx' })
  try {
    if (as.uid !== undefined) for (const place of [half, passwordFile]) fs.chownSync(place, as.uid, as.gid)
    // Without --encoding, LANG=C or POSIX gives SQL_ASCII.
    const locale = ['--encoding=UTF8', '--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8']
    const args = ['-D', half, '-U', 'postgres', `--pwfile=${passwordFile}`, '--auth=scram-sha-256', '--data-checksums', ...locale]
    run(initdb, volatile ? [...args, '--no-sync'] : args, as)
  } finally {
    fs.rmSync(passwordFile, { force: true })
  }
  fs.renameSync(half, data)
}

/** Gives the superuser of a cluster that is not running a new password: its file was lost. */
export function resetPassword({ postgres, as, data, password }) {
  run(postgres, ['--single', '-D', data, 'postgres'], as, `ALTER ROLE postgres PASSWORD '${password}'\n`)
}
