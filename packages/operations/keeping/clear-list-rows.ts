import type { Tx } from '@almanac/database/client'

/** Columns of a list that tell of equipment and water: what stays of a line. All others may name somebody. */
const STAYS = new Set([
  ...['softenerLabel', 'tankPosition', 'tank', 'tankCount', 'resinVolume', 'resinKind', 'installed', 'bedBegan', 'lastSeen'],
  ...['supplyName', 'disinfectant', 'hardness', 'iron', 'chlorine', 'latitude', 'longitude', 'region', 'town'],
])

type Column = { column: number; field: string | null; examples?: string[] }
type Entry = { kind: string; id: string; key: string }

/** Clears the lines of imported lists that told of a customer: every cell that may name them, what was noted of those, and how the records would be put back. Answers how many lines. */
export async function clearListRows(tx: Tx, companyId: string, customerId: string): Promise<number> {
  const sites = await tx.tenure.findMany({ where: { companyId, customerId }, select: { siteId: true } })
  const rows = await tx.importRow.findMany({
    where: { companyId, OR: [{ customerId }, { siteId: { in: sites.map((one) => one.siteId) } }] },
    select: { id: true, batchId: true, cells: true, before: true },
  })
  for (const batchId of new Set(rows.map((row) => row.batchId))) {
    const batch = await tx.importBatch.findUniqueOrThrow({ where: { companyId_id: { companyId, id: batchId } } })
    const mapping = batch.mapping as { columns?: Column[] }
    const columns = mapping.columns ?? []
    const kept = new Set(columns.filter((one) => one.field !== null && STAYS.has(one.field)).map((one) => one.column))
    await tx.importBatch.update({
      where: { companyId_id: { companyId, id: batchId } },
      data: {
        mapping: {
          ...mapping,
          columns: columns.map((one) => ({ ...one, examples: kept.has(one.column) ? (one.examples ?? []) : [] })),
        } as object,
      },
    })
    for (const row of rows.filter((one) => one.batchId === batchId)) {
      const before = Array.isArray(row.before) ? (row.before as unknown as Entry[]) : null
      await tx.importRow.update({
        where: { companyId_id: { companyId, id: row.id } },
        data: {
          cells: row.cells.map((cell, index) => (kept.has(index) ? cell : '')),
          ...{ problems: [], notes: [] },
          // Its keys hold name and number. Without the person's own entries an undo leaves the customer as they are: erased.
          ...(before && {
            before: before
              .filter((entry) => entry.kind !== 'customer' && entry.kind !== 'contact')
              .map((entry) => ({ ...entry, key: `erased:${entry.id}` })) as object[],
          }),
        },
      })
    }
  }
  return rows.length
}
