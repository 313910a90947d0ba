import os from 'node:os'
import { APIError } from 'better-auth/api'
import { hashPassword, verifyPassword } from 'better-auth/crypto'

/**
 * Hashing a password takes a tenth of a second of a core and a thread of the pool that compression and the file system use too. So few run at one time that a
 * core and most of the pool stay free for everything else; the others wait in line, and a line that is too long is closed.
 */
const AT_ONCE = Math.max(1, Math.min(2, Math.floor(os.availableParallelism() / 2)))
const MOST_WAITING = 20

let running = 0
const line: (() => void)[] = []

async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  if (running >= AT_ONCE) {
    if (line.length >= MOST_WAITING)
      throw new APIError(
        'SERVICE_UNAVAILABLE',
        {
          message: 'Too many passwords are being checked right now. Nothing was changed; try again in a few seconds.',
          code: 'unavailable',
        },
        { 'retry-after': '5' },
      )
    await new Promise<void>((go) => line.push(go))
  } else running++
  try {
    return await work()
  } finally {
    const next = line.shift()
    if (next) next()
    else running--
  }
}

/** The hash of a password, in turn. Answers 503 when too many wait. */
export const hashInTurn = (password: string): Promise<string> => inTurn(() => hashPassword(password))

/** Whether a password has this hash, in turn. Answers 503 when too many wait. */
export const verifyInTurn = (given: { hash: string; password: string }): Promise<boolean> => inTurn(() => verifyPassword(given))
