import { addRequests } from '@almanac/database/sql/count-request'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'

/** Requests are counted in the database, over all processes; so that not each of them waits for a statement, so many are counted at one time, as a share of the limit. */
const TAKEN_AT_ONCE = 10
const SHARE_OF_LIMIT = 60
const MINUTE_MS = 60_000

/** Requests of the present minute that are counted already and not used yet, by whoever asks; and countings under way. */
let minute = 0
let counted = new Map<string, number>()
const asking = new Map<string, Promise<void>>()

/** Counts some requests ahead: what of them lies within the limit may be used. */
async function countAhead(by: string, limit: number): Promise<void> {
  const amount = Math.max(1, Math.min(TAKEN_AT_ONCE, Math.floor(limit / SHARE_OF_LIMIT)))
  const before = (await addRequests(by, amount)) - amount
  const left = Math.min(amount, limit - before)
  if (left > 0) counted.set(by, (counted.get(by) ?? 0) + left)
}

/** Counts a request in the present minute, over all processes, by whoever asks (a person, a link, an address); refuses beyond the configured number. */
export async function countRequest(by: string): Promise<void> {
  const limit = config().REQUESTS_PER_MINUTE
  const present = Math.floor(Date.now() / MINUTE_MS)
  if (present !== minute) {
    minute = present
    counted = new Map()
  }
  // Whoever finds a counting under way waits for it: its requests may be enough for both.
  while (!counted.get(by)) {
    const others = asking.get(by)
    const under = others ?? countAhead(by, limit).finally(() => asking.delete(by))
    if (!others) asking.set(by, under)
    await under
    if (!others) break
  }
  const left = counted.get(by) ?? 0
  if (left > 0) {
    counted.set(by, left - 1)
    return
  }
  throw new AppError(
    'rate-limited',
    `More than ${limit} requests came from you in a minute. This one changed nothing; wait a minute and try again.`,
  )
}
