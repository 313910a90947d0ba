import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'

const EVERY_MS = 1000

/**
 * Shows how far an import has come by small transactions of its own, since the import's transaction shows nothing before it ends. Must be stopped before
 * that transaction touches the batch's row, or the two would wait for each other.
 */
export function progressOf(companyId: string, batchId: string) {
  let last = performance.now()
  let stopped = false
  const set = (data: { state?: string; doneRows?: number; failure?: string | null }) =>
    inCompany({ companyId }, async (tx) => {
      const { count } = await tx.importBatch.updateMany({
        where: { companyId, id: batchId, state: { in: ['queued', 'applying', 'failed'] } },
        data,
      })
      await commandTools(tx, { companyId, personId: null }, 'imports.apply', null).announce('import-batch', batchId)
      return count
    })
  return {
    /** Marks the batch as under way; false where it is applied or undone already. Refuses a batch of another company. */
    begin: async () => {
      const known = await inCompany({ companyId }, (tx) => tx.importBatch.count({ where: { companyId, id: batchId } }))
      if (known === 0) throw notFound('import')
      return (await set({ state: 'applying', doneRows: 0, failure: null })) > 0
    },
    /** Shows so many rows, about once a second. */
    show: async (doneRows: number) => {
      if (stopped || performance.now() - last < EVERY_MS) return
      last = performance.now()
      await set({ doneRows })
    },
    stop: async () => {
      stopped = true
    },
    fail: (failure: string) => set({ state: 'failed', doneRows: 0, failure }),
  }
}
