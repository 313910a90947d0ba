import { identityClient } from '@almanac/database/client'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'

/** Counts a request of a person in the present minute, over all processes; refuses beyond the configured number. */
export async function countRequest(personId: string): Promise<void> {
  const limit = config().REQUESTS_PER_MINUTE
  const [row] = await identityClient().$queryRaw<{ count: number }[]>`
    insert into request_window as w (key, starts_at, count) values (${personId}, date_trunc('minute', now()), 1)
    on conflict (key) do update set
      count = case when w.starts_at = excluded.starts_at then w.count + 1 else 1 end, starts_at = excluded.starts_at
    returning count`
  if (row && row.count > limit)
    throw new AppError(
      'rate-limited',
      `More than ${limit} requests in a minute came from you. Nothing was changed by this one; wait a minute and try again.`,
    )
}
