import type { MaterialLine } from '@almanac/contract/materials'
import type { MaterialState, MaterialWay } from '@almanac/records/stock'
import { notFound } from '@almanac/runtime/errors'
import { inCompany, type Scope } from '../in-company.ts'
import { readFreeStock } from './free-stock.ts'

/** What a customer asked for with a job, in the order it was asked for; what was called off is left out. */
export async function readMaterials(scope: Pick<Scope, 'companyId'>, jobId: string): Promise<{ lines: MaterialLine[] }> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const job = await tx.job.findUnique({ where: { companyId_id: { companyId, id: jobId } }, select: { id: true } })
    if (!job) throw notFound('job')
    const lines = await tx.materialLine.findMany({
      where: { companyId, jobId, state: { not: 'called-off' } },
      include: { stockItem: { select: { name: true, unit: true, priceMinor: true } } },
      orderBy: { id: 'asc' },
    })
    const free = new Map((await readFreeStock(tx, companyId)).map((item) => [item.id, item.free]))
    return {
      lines: lines.map(({ stockItem, ...line }) => ({
        ...{ id: line.id, version: line.version, stockItemId: line.stockItemId, quantity: line.quantity, returned: line.returned },
        ...stockItem,
        state: line.state as MaterialState,
        way: line.way as MaterialWay | null,
        handedAt: line.handedAt?.toISOString() ?? null,
        free: free.get(line.stockItemId) ?? 0,
      })),
    }
  })
}
