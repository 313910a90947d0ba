import { addRequest } from '@almanac/database/sql/count-request'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'

/** Counts a request in the present minute, over all processes, by whoever asks (a person, a link, an address); refuses beyond the configured number. */
export async function countRequest(by: string): Promise<void> {
  const limit = config().REQUESTS_PER_MINUTE
  const count = await addRequest(by)
  if (count > limit)
    throw new AppError(
      'rate-limited',
      `More than ${limit} requests came from you in a minute. This one changed nothing; wait a minute and try again.`,
    )
}
