// A lock between processes on one machine: a file that names its holder. Plain Node, because run.mjs needs it before packages exist.
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { isAlive, self } from './alive.mjs'

const readHolder = (file) => {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8'))
  } catch (error) {
    return error.code === 'ENOENT' ? undefined : {} // half written: its writer is about to finish, or died
  }
}

/** Takes the lock when it is free or its holder is dead; returns undefined on success, else the holder's record. */
export function tryLock(file, more = {}) {
  fs.mkdirSync(path.dirname(file), { recursive: true })
  // A finished file is linked into place, so that nobody ever sees half a record.
  const mine = `${file}.${process.pid}`
  fs.writeFileSync(mine, JSON.stringify({ ...self(), ...more }))
  try {
    for (;;) {
      try {
        fs.linkSync(mine, file)
        return undefined
      } catch (error) {
        if (error.code !== 'EEXIST') throw error
      }
      const holder = readHolder(file)
      if (holder === undefined) continue
      if (isAlive(holder.pid, holder.mark)) return holder
      removeStale(file, holder)
    }
  } finally {
    fs.rmSync(mine, { force: true })
  }
}

/** Takes a dead holder's file away. By rename, and looked at again, so that of two who do so at once neither removes the other's fresh lock. */
function removeStale(file, holder) {
  const aside = `${file}.stale.${process.pid}`
  try {
    fs.renameSync(file, aside)
  } catch (error) {
    if (error.code === 'ENOENT') return
    throw error
  }
  const moved = readHolder(aside)
  if (moved?.pid !== holder.pid || moved?.mark !== holder.mark) {
    try {
      fs.linkSync(aside, file) // it was another's fresh lock: put it back
    } catch (error) {
      if (error.code !== 'EEXIST') throw error
    }
  }
  fs.rmSync(aside, { force: true })
}

/** Rewrites the record of a lock that this process holds. */
export function updateLock(file, more) {
  const next = `${file}.${process.pid}`
  fs.writeFileSync(next, JSON.stringify({ ...self(), ...more }))
  fs.renameSync(next, file)
}

export function releaseLock(file) {
  if (readHolder(file)?.pid === process.pid) fs.rmSync(file, { force: true })
}

/** Runs `work` while holding the lock; `onWait(holder)` is called once if another process holds it. */
export async function withLock(file, work, onWait = () => {}) {
  for (let waited = false; ; waited = true) {
    const holder = tryLock(file)
    if (!holder) break
    if (!waited) onWait(holder)
    await sleep(150)
  }
  try {
    return await work()
  } finally {
    releaseLock(file)
  }
}
