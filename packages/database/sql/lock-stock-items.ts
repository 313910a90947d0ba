import type { Tx } from '../client.ts'

/** Locks stock items until the transaction ends, in id order. */
export async function lockStockItems(tx: Tx, companyId: string, ids: string[]): Promise<void> {
  await tx.$queryRaw`select 1 from stock_item where company_id = ${companyId}::uuid and id = any(${ids}::uuid[]) order by id for update`
}
