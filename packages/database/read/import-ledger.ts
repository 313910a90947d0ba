import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'

const CHUNK = 5000

/** What applied imports wrote about these customers and all that hangs on them, oldest import first. The shape of an entry is the operation's own. */
export async function readImportLedger(tx: Tx, companyId: string, customerIds: readonly string[]): Promise<unknown[]> {
  const entries: { at: Date; line: number; before: unknown[] }[] = []
  for (let start = 0; start < customerIds.length; start += CHUNK) {
    const rows = await tx.importRow.findMany({
      where: {
        companyId,
        batch: { state: 'applied' },
        customerId: { in: customerIds.slice(start, start + CHUNK) },
        NOT: { before: { equals: Prisma.DbNull } },
      },
      select: { line: true, before: true, batch: { select: { appliedAt: true } } },
    })
    for (const row of rows)
      if (Array.isArray(row.before)) entries.push({ at: row.batch.appliedAt ?? new Date(0), line: row.line, before: row.before })
  }
  entries.sort((a, b) => a.at.getTime() - b.at.getTime() || a.line - b.line)
  return entries.flatMap((entry) => entry.before)
}

/** Batches that were undone: what they made and was removed with them may be brought in again. */
export async function readUndoneBatches(tx: Tx, companyId: string): Promise<Set<string>> {
  const rows = await tx.importBatch.findMany({ where: { companyId, state: 'undone' }, select: { id: true } })
  return new Set(rows.map((row) => row.id))
}
