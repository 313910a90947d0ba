import { addRequest } from '@almanac/database/sql/count-request'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'

/** Counts a request of a person in the present minute, over all processes; refuses beyond the configured number. */
export async function countRequest(personId: string): Promise<void> {
  const limit = config().REQUESTS_PER_MINUTE
  const count = await addRequest(personId)
  if (count > limit)
    throw new AppError(
      'rate-limited',
      `More than ${limit} requests in a minute came from you. Nothing was changed by this one; wait a minute and try again.`,
    )
}
