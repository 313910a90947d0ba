import type { ReadAgainInput } from '@almanac/contract/imports'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import type { StoredMapping } from './batch-mapping.ts'
import { emptyDraft } from './discard-draft.ts'
import { readBatch } from './read-batch.ts'

/**
 * Has the file of a draft read another way: another sheet, another line for the headings. It becomes an import of its own, and the draft is emptied. 409 where the
 * file is no longer kept, the draft went on meanwhile, or another file is being read.
 */
export async function readAgain(scope: Scope & { personId: string }, input: ReadAgainInput): Promise<{ batchId: string }> {
  const { companyId } = scope
  return runCommand(scope, 'imports.read-again', input, async (tx, command) => {
    const batch = await readBatch(tx, companyId, input.batchId)
    const isKept = (await tx.importFilePiece.count({ where: { companyId, batchId: batch.id } })) > 0
    if (!isKept || (batch.state !== 'draft' && batch.state !== 'refused'))
      throw new AppError('conflict', 'This file isn’t kept any more, so it can’t be read again. Nothing was changed; import it anew.')
    const { count } = await tx.importBatch.updateMany({
      where: { companyId, id: batch.id, version: input.version },
      data: { version: { increment: 1 } },
    })
    await expectChanged(count, 'import', input.version, {}, async () => ({ version: batch.version }))
    const batchId = newId()
    const { sheets } = batch.mapping
    const readAs = { sheet: input.sheet ?? undefined, headingLine: input.headingLine }
    const unread: StoredMapping = { columns: [], sentences: [], checked: false, sheets, sheet: readAs.sheet, readAs }
    await tx.importBatch.create({
      data: {
        ...{ companyId, id: batchId, state: 'reading', headerLine: 0, header: [], mapping: unread as object, totalRows: 0 },
        ...{ fileName: batch.fileName, createdAt: command.at, createdBy: scope.personId },
      },
    })
    await tx.importFilePiece.updateMany({ where: { companyId, batchId: batch.id }, data: { batchId } })
    await emptyDraft(tx, companyId, batch.id)
    await command.enqueue('read-file', { batchId })
    await command.audit('file kept to be read', 'import-batch', batchId)
    await command.announce('import-batch', batchId, 1)
    await command.announce('import-batch', batch.id, input.version + 1)
    return { batchId }
  })
}
