import type { BatchCommandInput } from '@almanac/contract/imports'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import type { StoredMapping } from './batch-mapping.ts'
import { readBatch } from './read-batch.ts'

const DISCARDABLE = new Set(['draft', 'failed', 'refused'])

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
    const nothing: StoredMapping = { columns: [], sentences: [], checked: false }
    const { count } = await tx.importBatch.updateMany({
      where: { companyId, id: batch.id, version: input.version },
      data: { state: 'discarded', header: [], mapping: nothing as object, counts: {}, failure: null, version: { increment: 1 } },
    })
    await expectChanged(count, 'import', input.version, {}, async () => ({ version: batch.version }))
    await tx.importRow.updateMany({ where: { companyId, batchId: batch.id }, data: { cells: [], problems: [], notes: [] } })
    await command.audit('discarded', 'import-batch', batch.id, { rows: batch.totalRows })
    await command.announce('import-batch', batch.id, input.version + 1)
    return { batchId: batch.id, version: input.version + 1 }
  })
}
