import { identityClient } from '../client.ts'

/** Adds one to the person's count of the present minute, over all processes, and answers it. */
export async function addRequest(personId: string): Promise<number> {
  const [row] = await identityClient().$queryRaw<{ count: number }[]>`
    insert into request_window as w (key, starts_at, count) values (${personId}, date_trunc('minute', now()), 1)
    on conflict (key) do update set
      count = case when w.starts_at = excluded.starts_at then w.count + 1 else 1 end, starts_at = excluded.starts_at
    returning count`
  return row?.count ?? 0
}
