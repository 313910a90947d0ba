import { inCompany } from '@almanac/database/in-company'
import { fileStore } from '@almanac/files/file-store'
import { now } from '@almanac/runtime/clock'
import { dropHalfSent, dropOldHalves } from './half-sent.ts'

/** What came of a picture and was not sent on for so long is forgotten; the tablet still has it and sends it from its beginning. */
const HALF_SENT_DAYS = 14

/** Takes the files of erased pictures and mailed reports out of the store, and what was half sent of them; and says of each that it is gone. Done twice it is done once. */
export async function removeErasedPictures({ companyId }: { companyId: string }): Promise<void> {
  const erased = await inCompany({ companyId }, (tx) =>
    tx.picture.findMany({ where: { companyId, state: 'erased' }, select: { id: true }, orderBy: { id: 'asc' } }),
  )
  for (const { id } of erased) {
    await fileStore().remove({ companyId, id })
    await dropHalfSent(companyId, id)
    await inCompany({ companyId }, (tx) =>
      tx.picture.updateMany({ where: { companyId, id, state: 'erased' }, data: { state: 'gone', version: { increment: 1 } } }),
    )
  }
  const reports = await inCompany({ companyId }, (tx) =>
    tx.message.findMany({ where: { companyId, fileState: 'erased' }, select: { id: true }, orderBy: { id: 'asc' } }),
  )
  for (const { id } of reports) {
    await fileStore().remove({ companyId, id })
    await inCompany({ companyId }, (tx) =>
      tx.message.updateMany({ where: { companyId, id, fileState: 'erased' }, data: { fileState: 'gone', version: { increment: 1 } } }),
    )
  }
  await dropOldHalves(companyId, new Date(now().getTime() - HALF_SENT_DAYS * 86_400_000))
}
