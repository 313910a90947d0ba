import { inCompany } from '@almanac/database/in-company'
import { now } from '@almanac/runtime/clock'
import { removeArchives } from './export-place.ts'

/** An archive holds everything of everybody: it stays for so many days. */
const DAYS_KEPT = 7

/** Takes off the disk what the page no longer offers: archives that are too old, and those made before somebody was erased. */
export async function removeOldExports(companyId: string): Promise<void> {
  const before = new Date(now().getTime() - DAYS_KEPT * 86_400_000)
  const gone = await inCompany({ companyId }, async (tx) => {
    await tx.companyExport.updateMany({
      where: { companyId, state: 'ready', createdAt: { lt: before } },
      data: { state: 'removed', version: { increment: 1 } },
    })
    return tx.companyExport.findMany({ where: { companyId, state: 'removed' }, select: { id: true } })
  })
  await removeArchives(
    companyId,
    gone.map((one) => one.id),
  )
}
