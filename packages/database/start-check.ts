import { setTimeout as sleep } from 'node:timers/promises'
import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import { refuseChangedCatalogue } from './catalogue-check.ts'
import { asAppError } from './database-errors.ts'
import { refuseBypassingLogins } from './login-check.ts'

const AGAIN_AFTER_MS = 1000

/**
 * What web and worker ask before they serve: that the database keeps companies apart. A database that cannot be reached is waited for, however long: it comes
 * back by itself or by its operator, and a process that ended meanwhile would have to be started again. Throws what is wrong otherwise.
 */
export async function checkAtStart(): Promise<void> {
  for (let told = false; ; told = true) {
    try {
      await refuseBypassingLogins()
      return await refuseChangedCatalogue()
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
