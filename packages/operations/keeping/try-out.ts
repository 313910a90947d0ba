import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Command, commandTools } from '@almanac/database/run-command'
import { PATIENCE } from './erase-patience.ts'

class TriedOut extends Error {}

/** Does what an erasing does and takes all of it back: what it would take is counted by the erasing itself. Nothing is changed, told or put on a queue. */
export async function tryOut<T extends object>(
  scope: Scope & { personId: string },
  operation: string,
  work: (tx: Tx, command: Command) => Promise<T>,
): Promise<T> {
  let found: T | undefined
  try {
    await inCompany(
      scope,
      async (tx) => {
        found = await work(tx, commandTools(tx, scope, operation, null))
        throw new TriedOut()
      },
      PATIENCE,
    )
  } catch (error) {
    if (found === undefined) throw error
  }
  return found as T
}
