import { setTimeout as sleep } from 'node:timers/promises'
import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import { refuseChangedCatalogue } from './catalogue-check.ts'
import { asAppError } from './database-errors.ts'
import { refuseBypassingLogins } from './login-check.ts'

const AGAIN_AFTER_MS = 1000

/**
 * Tries `work` until the database can be reached, however long that takes: it comes back by itself or by its operator, and a process that ended meanwhile would
 * have to be started again. Throws what is wrong otherwise.
 */
export async function whenThere<T>(work: () => Promise<T>): Promise<T> {
  for (let told = false; ; told = true) {
    try {
      return await work()
    } catch (error) {
      const known = asAppError(error)
      // Locked is one that is just being migrated: its catalogue can be read when that is done.
      const passes = known instanceof AppError && (known.code === 'unavailable' || known.detail.busy === true)
      if (!passes) throw known
      if (!told) log().warn({ error: known.cause instanceof Error ? known.cause.message : undefined }, 'waiting for the database')
      await sleep(AGAIN_AFTER_MS)
    }
  }
}

/** What web and worker ask before they serve: that the database keeps companies apart. Waits for one that is away; throws what is wrong otherwise. */
export const checkAtStart = (): Promise<void> =>
  whenThere(async () => {
    await refuseBypassingLogins()
    await refuseChangedCatalogue()
  })
