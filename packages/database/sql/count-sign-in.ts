import { identityClient } from '../client.ts'

/** Tries before a delay begins, and the longest delay. With these a guesser gets about a hundred tries a day at one account. */
const FREE_TRIES = 5
const LONGEST_SECONDS = 900
const SWEEP_ONE_IN = 100
let counted = 0

/**
 * Counts a try of a password at a key before it is checked, in one statement, so that tries at one moment cannot slip through together. From the fifth on each
 * try doubles the wait for the next: 2 s, 4 s, … 15 minutes; an hour without a try forgets them. Answers the seconds to wait; 0 for a try that may be made.
 */
export async function countTry(key: string): Promise<number> {
  const identity = identityClient()
  if (++counted % SWEEP_ONE_IN === 0) await identity.$executeRaw`delete from sign_in_guard where last_at < now() - interval '1 hour'`
  const allowed = await identity.$executeRaw`
    insert into sign_in_guard as g (key, tries, last_at, blocked_until) values (${key}, 1, now(), now())
    on conflict (key) do update set
      tries = case when g.last_at < now() - interval '1 hour' then 1 else g.tries + 1 end,
      last_at = now(),
      blocked_until = now() + case
        when g.last_at < now() - interval '1 hour' or g.tries + 1 < ${FREE_TRIES} then interval '0'
        else make_interval(secs => least(${LONGEST_SECONDS}::float8, power(2, least(g.tries + 2 - ${FREE_TRIES}, 20)))) end
    where g.blocked_until <= now()`
  if (allowed > 0) return 0
  const [row] = await identity.$queryRaw<{ seconds: number }[]>`
    select greatest(1, ceil(extract(epoch from blocked_until - now())))::int as seconds from sign_in_guard where key = ${key}`
  return row?.seconds ?? 1
}

/** Forgets a key's tries, after the right password. */
export async function forgetTries(key: string): Promise<void> {
  await identityClient().$executeRaw`delete from sign_in_guard where key = ${key}`
}
