import type { BatchCommandInput } from '@almanac/contract/imports'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import type { StoredMapping } from './batch-mapping.ts'
import { readBatch } from './read-batch.ts'

const DISCARDABLE = new Set(['draft', 'failed', 'refused'])

/** Empties a draft: what its file, rows and columns said is gone. */
export async function emptyDraft(tx: Tx, companyId: string, batchId: string): Promise<void> {
  const nothing: StoredMapping = { columns: [], sentences: [], checked: false }
  await tx.importBatch.update({
    where: { companyId_id: { companyId, id: batchId } },
    data: { state: 'discarded', header: [], mapping: nothing as object, counts: {}, failure: null },
  })
  await tx.importRow.updateMany({ where: { companyId, batchId }, data: { cells: [], problems: [], notes: [] } })
  await tx.importFilePiece.deleteMany({ where: { companyId, batchId } })
}

/**
 * Discards a file that was never brought in: what its rows and columns said is gone, its name and the day stay in the records. 409 for one that is being
 * read or written, was written, or changed meanwhile.
 */
export async function discardDraft(
  scope: Scope & { personId: string },
  input: BatchCommandInput,
): Promise<{ batchId: string; version: number }> {
  const { companyId } = scope
  return runCommand(scope, 'imports.discard', input, async (tx, command) => {
    const batch = await readBatch(tx, companyId, input.batchId)
    if (!DISCARDABLE.has(batch.state))
      throw new AppError('conflict', 'Only a list that was not imported can be discarded. Nothing was changed; load the page again.')
    const { count } = await tx.importBatch.updateMany({
      where: { companyId, id: batch.id, version: input.version },
      data: { version: { increment: 1 } },
    })
    await expectChanged(count, 'import', input.version, {}, async () => ({ version: batch.version }))
    await emptyDraft(tx, companyId, batch.id)
    await command.audit('discarded', 'import-batch', batch.id, { rows: batch.totalRows })
    await command.announce('import-batch', batch.id, input.version + 1)
    return { batchId: batch.id, version: input.version + 1 }
  })
}
