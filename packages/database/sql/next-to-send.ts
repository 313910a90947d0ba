import type { Tx } from '../client.ts'

/**
 * The oldest approved message that may be tried now, locked until the transaction ends; null when there is none. One that another worker is just taking is
 * passed over, so that two never take the same.
 */
export async function nextToSend(tx: Tx, companyId: string, channels: readonly string[], at: Date): Promise<string | null> {
  const [row] = await tx.$queryRaw<{ id: string }[]>`
    select id from message where company_id = ${companyId}::uuid and state = 'approved' and channel = any(${channels})
      and (try_after is null or try_after <= ${at}) order by created_at, id limit 1 for no key update skip locked`
  return row?.id ?? null
}
