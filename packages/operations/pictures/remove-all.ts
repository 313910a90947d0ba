import { inCompany } from '@almanac/database/in-company'
import { fileStore } from '@almanac/files/file-store'
import { dropHalfSent, dropOldHalves } from './half-sent.ts'

/** Takes every picture and mailed report of a company out of the store, the logo of its papers too, and what was half sent of them. Done twice it is done once. */
export async function removeAllPictures(companyId: string): Promise<void> {
  const all = await inCompany({ companyId }, (tx) =>
    tx.picture.findMany({ where: { companyId }, select: { id: true }, orderBy: { id: 'asc' } }),
  )
  for (const { id } of all) {
    await fileStore().remove({ companyId, id })
    await dropHalfSent(companyId, id)
  }
  const logo = await inCompany({ companyId }, (tx) => tx.companySettings.findUnique({ where: { companyId }, select: { id: true } }))
  if (logo) await fileStore().remove({ companyId, id: logo.id })
  const reports = await inCompany({ companyId }, (tx) =>
    tx.message.findMany({ where: { companyId, fileState: { in: ['stored', 'erased'] } }, select: { id: true }, orderBy: { id: 'asc' } }),
  )
  for (const { id } of reports) await fileStore().remove({ companyId, id })
  await dropOldHalves(companyId, new Date(8_640_000_000_000_000))
}
