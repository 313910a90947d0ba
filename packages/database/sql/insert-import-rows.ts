import type { Tx } from '../client.ts'

/** Keeps rows of a file as they came in a draft: `rows` is a JSON array of { id, line, cells }, written by whoever read the file. */
export async function insertImportRows(tx: Tx, companyId: string, batchId: string, rows: string): Promise<void> {
  await tx.$executeRaw`
    insert into import_row (company_id, id, batch_id, line, cells, status)
    select ${companyId}::uuid, r.id, ${batchId}::uuid, r.line, r.cells, 'pending'
    from jsonb_to_recordset(${rows}::jsonb) as r (id uuid, line int, cells text[])`
}
