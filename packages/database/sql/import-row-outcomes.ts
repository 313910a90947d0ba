import type { Tx } from '../client.ts'

export type RowOutcomeWrite = {
  id: string
  status: string
  problems: unknown[]
  notes: string[]
  customerId: string | null
  siteId: string | null
  softenerId: string | null
  before: unknown
}

/** Writes what became of some rows of an import, in one statement. */
export async function saveRowOutcomes(tx: Tx, companyId: string, rows: readonly RowOutcomeWrite[]): Promise<void> {
  await tx.$executeRaw`
    update import_row r set status = n.status, problems = n.problems, notes = n.notes, customer_id = n."customerId", site_id = n."siteId",
      softener_id = n."softenerId", before = n.before
    from jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) as n(id uuid, status text, problems jsonb, notes jsonb, "customerId" uuid, "siteId" uuid,
      "softenerId" uuid, before jsonb)
    where r.company_id = ${companyId}::uuid and r.id = n.id`
}

/** One import of a company at a time: the lock is given back when the transaction ends, however it ends. */
export async function lockImports(tx: Tx, companyId: string): Promise<void> {
  await tx.$executeRaw`select pg_advisory_xact_lock(hashtextextended(${`import:${companyId}`}, 0))`
}
