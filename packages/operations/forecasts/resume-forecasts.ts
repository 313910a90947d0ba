import { companyIds, inCompany } from '@almanac/database/in-company'
import { sendTaskAlone } from '@almanac/runtime/task-queue'
import { METHOD } from './fit-company.ts'

/**
 * What a worker asks for when it starts: runs that were broken off are carried on from where they stood, and a company with beds that was never fitted by
 * the method of this release is fitted. A run that another worker is at is shared with it, chunk by chunk.
 */
export async function resumeForecasts(): Promise<void> {
  for (const companyId of await companyIds()) {
    const { broken, unfitted } = await inCompany({ companyId }, async (tx) => {
      const broken = await tx.forecastRun.findMany({
        where: { companyId, scope: 'company', finishedAt: null },
        select: { id: true, refits: true, cause: true },
        orderBy: { startedAt: 'asc' },
      })
      const fit = await tx.forecastFit.findFirst({ where: { companyId, dataHash: { startsWith: METHOD } }, select: { id: true } })
      const bed = await tx.bed.findFirst({ where: { companyId, archivedAt: null }, select: { id: true } })
      return { broken, unfitted: !fit && bed !== null }
    })
    for (const { id, refits, cause } of broken)
      await sendTaskAlone(refits ? 'refit-company' : 'forecast-company', { companyId, runId: id, cause }, id)
    if (unfitted && !broken.some((run) => run.refits)) await sendTaskAlone('refit-company', { companyId, cause: 'refit' }, companyId)
  }
}
