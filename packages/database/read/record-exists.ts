import { inCompany, type Scope } from '../in-company.ts'

/** Records that have a page of their own. */
export type RecordKind = 'site' | 'softener' | 'bed' | 'job' | 'visit' | 'waterSupply' | 'importBatch'

/** Whether a company has a record of this id, archived or not: what is archived says so on its page. */
export function recordExists(scope: Pick<Scope, 'companyId'>, kind: RecordKind, id: string): Promise<boolean> {
  return inCompany(scope, async (tx) => {
    const where = { companyId: scope.companyId, id }
    const counts: Record<RecordKind, () => Promise<number>> = {
      site: () => tx.site.count({ where }),
      softener: () => tx.softener.count({ where }),
      bed: () => tx.bed.count({ where }),
      job: () => tx.job.count({ where }),
      visit: () => tx.visit.count({ where }),
      waterSupply: () => tx.waterSupply.count({ where }),
      importBatch: () => tx.importBatch.count({ where }),
    }
    return (await counts[kind]()) > 0
  })
}
