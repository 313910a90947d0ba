// Is the process that wrote a lock still the same one? A number alone is not enough: after a restart of a container
// the same small numbers come again, so the start time goes with it.
import { execFileSync } from 'node:child_process'
import fs from 'node:fs'

/** Something that differs between two processes that had the same number; '' where the platform tells nothing. */
function processMark(pid) {
  try {
    if (process.platform === 'linux') {
      const stat = fs.readFileSync(`/proc/${pid}/stat`, 'utf8')
      const startTicks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] // field 22; the name in brackets may hold spaces
      return `${fs.readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()}:${startTicks}`
    }
    if (process.platform === 'darwin')
      return execFileSync('ps', ['-p', String(pid), '-o', 'lstart='], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim()
  } catch {
    // no such process, or a platform that does not say
  }
  return ''
}

/** Whether process `pid` runs, and is the one that `mark` was taken of. */
export function isAlive(pid, mark) {
  if (!pid) return false
  try {
    process.kill(pid, 0)
  } catch (error) {
    if (error.code !== 'EPERM') return false
  }
  return mark === undefined || processMark(pid) === mark
}

/** This process, in the form that isAlive understands. */
export const self = () => ({ pid: process.pid, mark: processMark(process.pid) })
