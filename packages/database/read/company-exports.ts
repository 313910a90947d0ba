import type { ExportRow } from '@almanac/contract/exports'
import type { ExportState } from '@almanac/records/export-state'
import { inCompany, type Scope } from '../in-company.ts'

const SHOWN = 20

/** The company's latest archives, newest first. */
export async function readExports(scope: Pick<Scope, 'companyId'>): Promise<{ rows: ExportRow[] }> {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) => tx.companyExport.findMany({ where: { companyId }, orderBy: { id: 'desc' }, take: SHOWN }))
  return {
    rows: found.map(({ id, version, state, tablesDone, tablesTotal, rowsWritten, bytes, failure, createdAt, finishedAt }) => ({
      ...{ id, version, tablesDone, tablesTotal, rowsWritten, bytes, failure },
      state: state as ExportState,
      createdAt: createdAt.toISOString(),
      finishedAt: finishedAt?.toISOString() ?? null,
    })),
  }
}
