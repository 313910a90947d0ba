import { inCompany, type Scope } from '@almanac/database/in-company'
import { fileStore } from '@almanac/files/file-store'
import { AppError, notFound } from '@almanac/runtime/errors'

/** A picture's bytes for whoever may see it. Throws `not-found` for one that is not here. */
export async function openPicture(scope: Pick<Scope, 'companyId'>, pictureId: string): Promise<{ bytes: Uint8Array; contentType: string }> {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) =>
    tx.picture.findFirst({ where: { companyId, id: pictureId, state: 'stored' }, select: { id: true, kind: true } }),
  )
  if (!found) throw notFound('picture')
  const bytes = await fileStore().get({ companyId, id: found.id })
  if (!bytes)
    throw new AppError(
      'conflict',
      'The file of this picture is missing from the store. Its record was kept; ask whoever keeps the backups.',
    )
  return { bytes, contentType: found.kind === 'signature' ? 'image/png' : 'image/jpeg' }
}
