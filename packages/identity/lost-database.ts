import { AsyncLocalStorage } from 'node:async_hooks'
import type { identityClient } from '@almanac/database/client'
import { asAppError } from '@almanac/database/database-errors'
import { AppError } from '@almanac/runtime/errors'

const noted = new AsyncLocalStorage<{ failure?: AppError }>()

/**
 * The client for the sign-in library. It takes a database that cannot be reached for a missing session in one place, for a done sign-out in another and for a
 * mistake of its own in a third: so what failed is noted here, for `unlessLost` to say.
 */
export const noting = (client: ReturnType<typeof identityClient>) =>
  client.$extends({
    query: {
      async $allOperations({ args, query }) {
        try {
          return await query(args)
        } catch (error) {
          const known = asAppError(error)
          const request = noted.getStore()
          if (request && known instanceof AppError && known.code === 'unavailable') request.failure ??= known
          throw error
        }
      },
    },
  })

/** What the library answers, unless the database could not be reached meanwhile: then throws `unavailable`, whatever the library made of it. */
export async function unlessLost<T>(work: () => Promise<T>): Promise<T> {
  const request: { failure?: AppError } = {}
  const answer = await noted.run(request, work)
  if (request.failure) throw request.failure
  return answer
}
