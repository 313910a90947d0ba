// Log files: for their owner's eyes alone, kept over starts, the last 20 MB and as much again from before.
import fs from 'node:fs'

const keepBytes = 20e6

/** Opens a log for adding to, and answers its descriptor; a long one from before is set aside as `.old`. */
export function openLogFile(file) {
  if (fs.existsSync(file) && fs.statSync(file).size > keepBytes) fs.renameSync(file, `${file}.old`)
  const fd = fs.openSync(file, 'a', 0o600)
  fs.fchmodSync(fd, 0o600) // one of an earlier release could be read by all
  return fd
}
