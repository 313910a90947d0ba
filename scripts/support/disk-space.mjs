import fs from 'node:fs'
import path from 'node:path'
import { PlainError } from './say.mjs'

/** Free MB on the disk that holds `place`, or Infinity where the platform does not say. */
export function freeMb(place) {
  let dir = path.resolve(place)
  while (!fs.existsSync(dir)) dir = path.dirname(dir)
  try {
    const { bavail, bsize } = fs.statfsSync(dir)
    return Math.floor((bavail * bsize) / 1e6)
  } catch {
    return Number.POSITIVE_INFINITY
  }
}

/** Ends in one sentence when the disk is too full for what comes next. */
export function needDiskSpace(place, mb, what) {
  const free = freeMb(place)
  if (free < mb)
    throw new PlainError(
      `Not enough disk space for ${what}: ${mb} MB are needed and ${free} MB are free. Free some space and run this again.`,
    )
}
