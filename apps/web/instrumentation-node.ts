import { checkAtStart } from '@almanac/database/start-check'
import { log } from '@almanac/runtime/log'

/** Ends the process, with one sentence, when companies would not be kept apart; waits for a database that is not there yet. */
export async function checkDatabase(): Promise<void> {
  try {
    await checkAtStart()
  } catch (error) {
    log().fatal(error instanceof Error ? error.message : 'The server cannot start.')
    process.exit(1)
  }
}
