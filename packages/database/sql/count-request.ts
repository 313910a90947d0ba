import { identityClient } from '../client.ts'

/** One count in so many also sweeps what no present minute needs: addresses that came once must not stay for ever. */
const SWEEP_ONE_IN = 500
let counted = 0

/** Adds one to a key's count of the present minute, over all processes, and answers it. */
export const addRequest = (key: string): Promise<number> => addRequests(key, 1)

/** Adds so many to a key's count of the present minute, over all processes, and answers it. */
export async function addRequests(key: string, amount: number): Promise<number> {
  const [row] = await identityClient().$queryRaw<{ count: number }[]>`
    insert into request_window as w (key, starts_at, count) values (${key}, date_trunc('minute', now()), ${amount})
    on conflict (key) do update set
      count = case when w.starts_at = excluded.starts_at then w.count + excluded.count else excluded.count end, starts_at = excluded.starts_at
    returning count`
  if (++counted % SWEEP_ONE_IN === 0)
    await identityClient().$executeRaw`delete from request_window where starts_at < now() - interval '2 minutes'`
  return row?.count ?? 0
}

/** Gives one of a key's count of the present minute back. */
export async function takeBackRequest(key: string): Promise<void> {
  await identityClient().$executeRaw`
    update request_window set count = count - 1 where key = ${key} and starts_at = date_trunc('minute', now()) and count > 0`
}
