// One `start` a clone: the second sees the first.
import fs from 'node:fs'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { releaseLock, tryLock, updateLock } from './file-lock.mjs'
import { dataDir } from './paths.mjs'
import { say } from './say.mjs'
import { stopSignal } from './stop-signal.mjs'

const lockFile = path.join(dataDir, 'start.lock')

/**
 * Becomes the one that runs. While another one sets up, waits for it.
 * Resolves to { address, pid } of the one that runs already, or to { leftBehind } when it is us: whether an earlier one was killed.
 */
export async function becomeTheOne() {
  const wasThere = fs.existsSync(lockFile)
  for (let told = false; ; told = true) {
    const other = tryLock(lockFile)
    if (!other) return { leftBehind: wasThere }
    if (other.address) return { address: other.address, pid: other.pid }
    if (!told) say(`another start (process ${other.pid}) is setting up: waiting for it`)
    await sleep(300)
    stopSignal.throwIfAborted()
  }
}

/** Tells later starts where this one runs. */
export const announce = (address) => updateLock(lockFile, { address })

export const stepDown = () => releaseLock(lockFile)
