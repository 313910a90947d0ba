import { refuseBypassingLogins } from '@almanac/database/login-check'
import { log } from '@almanac/runtime/log'

/** Ends the process, with one sentence, when a login could pass by row security. */
export async function checkLogins(): Promise<void> {
  try {
    await refuseBypassingLogins()
  } catch (error) {
    log().fatal(error instanceof Error ? error.message : 'The server cannot start.')
    process.exit(1)
  }
}
