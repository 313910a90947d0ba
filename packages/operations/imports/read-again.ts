import type { ReadAgainInput } from '@almanac/contract/imports'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { beginReading } from './begin-reading.ts'
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
      throw new AppError('conflict', 'This file isn’t kept any more, so it can’t be read again. Nothing was changed; import it again.')
    const { count } = await tx.importBatch.updateMany({
      where: { companyId, id: batch.id, version: input.version },
      data: { version: { increment: 1 } },
    })
    await expectChanged(count, 'import', input.version, {}, async () => ({ version: batch.version }))
    const readAs = { sheet: input.sheet ?? undefined, headingLine: input.headingLine }
    const { sheets } = batch.mapping
    const batchId = await beginReading(tx, command, { fileName: batch.fileName, createdBy: scope.personId, sheets, readAs })
    await tx.importFilePiece.updateMany({ where: { companyId, batchId: batch.id }, data: { batchId } })
    await emptyDraft(tx, companyId, batch.id)
    await command.announce('import-batch', batch.id, input.version + 1)
    return { batchId }
  })
}
