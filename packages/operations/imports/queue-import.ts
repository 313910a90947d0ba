import type { BatchCommandInput } from '@almanac/contract/imports'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { readBatch } from './read-batch.ts'

/** Hands a checked batch to the worker, in the transaction that marks it. May be sent again while it waits or after it failed: it is applied once. */
export async function queueImport(
  scope: Scope & { personId: string },
  input: BatchCommandInput,
): Promise<{ batchId: string; version: number }> {
  const { companyId } = scope
  return runCommand(scope, 'imports.apply', input, async (tx, command) => {
    const batch = await readBatch(tx, companyId, input.batchId)
    if (batch.state === 'applied' || batch.state === 'undone')
      throw new AppError('conflict', `This import was ${batch.state} already. Nothing was changed; import the file again to redo it.`)
    if (!batch.mapping.checked)
      throw new AppError('conflict', 'This file’s columns are not confirmed yet. Nothing was imported; check the rows first.')
    const { count } = await tx.importBatch.updateMany({
      where: { companyId, id: batch.id, version: input.version },
      data: { state: 'queued', doneRows: 0, failure: null, version: { increment: 1 } },
    })
    await expectChanged(count, 'import', input.version, {}, async () => ({ version: batch.version }))
    await tx.importFilePiece.deleteMany({ where: { companyId, batchId: batch.id } })
    await command.enqueue('apply-import', { batchId: batch.id })
    await command.audit('handed over', 'import-batch', batch.id, { rows: batch.totalRows })
    await command.announce('import-batch', batch.id, input.version + 1)
    return { batchId: batch.id, version: input.version + 1 }
  })
}
