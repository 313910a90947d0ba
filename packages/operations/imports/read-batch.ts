import type { Tx } from '@almanac/database/client'
import { notFound } from '@almanac/runtime/errors'
import type { StoredMapping } from './batch-mapping.ts'

/** A batch of the company with its mapping; 404 for any other. */
export async function readBatch(tx: Tx, companyId: string, batchId: string) {
  const batch = await tx.importBatch.findFirst({ where: { companyId, id: batchId } })
  if (!batch) throw notFound('import')
  return { ...batch, mapping: batch.mapping as unknown as StoredMapping }
}

/** The rows of a batch as they came, in the order of the file. */
export function readBatchRows(tx: Tx, companyId: string, batchId: string) {
  return tx.importRow.findMany({ where: { companyId, batchId }, select: { id: true, line: true, cells: true }, orderBy: { line: 'asc' } })
}
