import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import type { ReadAs, StoredMapping } from './batch-mapping.ts'

type Unread = { fileName: string; createdBy: string; sheets?: string[]; readAs?: ReadAs }

/** Makes an import whose file is still to be read, and hands it to the worker; answers its id. Its pieces are put there by the caller, in the same transaction. */
export async function beginReading(tx: Tx, command: Command, { fileName, createdBy, sheets, readAs }: Unread): Promise<string> {
  const { companyId } = command
  const batchId = newId()
  const unread: StoredMapping = { columns: [], sentences: [], checked: false, sheets, sheet: readAs?.sheet, readAs }
  await tx.importBatch.create({
    data: {
      ...{ companyId, id: batchId, state: 'reading', headerLine: 0, header: [], mapping: unread as object, totalRows: 0 },
      ...{ fileName, createdAt: command.at, createdBy },
    },
  })
  await command.enqueue('read-file', { batchId })
  await command.audit('file kept to be read', 'import-batch', batchId)
  await command.announce('import-batch', batchId, 1)
  return batchId
}
