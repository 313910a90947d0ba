import { inCompany, type Scope } from '@almanac/database/in-company'
import { fileStore } from '@almanac/files/file-store'
import { AppError, notFound } from '@almanac/runtime/errors'

/** A report as it was mailed: the bytes that went. Throws `not-found` for one that is not here or was erased. */
export async function openMailedReport(
  { companyId }: Pick<Scope, 'companyId'>,
  messageId: string,
): Promise<{ bytes: Uint8Array; name: string }> {
  const found = await inCompany({ companyId }, (tx) =>
    tx.message.findFirst({ where: { companyId, id: messageId, fileState: 'stored' }, select: { fileName: true } }),
  )
  if (!found) throw notFound('report')
  const bytes = await fileStore().get({ companyId, id: messageId })
  if (!bytes)
    throw new AppError('conflict', 'The file of this report is missing from the store. Its record was kept; ask whoever keeps the backups.')
  return { bytes, name: found.fileName ?? '' }
}
