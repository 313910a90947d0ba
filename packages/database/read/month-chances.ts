import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

const CHUNK = 2_000

export type BedMonths = { runId: string; asOfDay: string; waterSupplyId: string | null; chances: Float32Array }

/** Every bed's stored month chances, page by page in id order, so that a large company does not stand in memory at once. */
export async function* readMonthChances(tx: Tx, companyId: string): AsyncGenerator<BedMonths> {
  let after: string | undefined
  for (;;) {
    const rows = await tx.bedForecast.findMany({
      where: { companyId, ...(after ? { id: { gt: after } } : {}) },
      select: { id: true, runId: true, asOfDay: true, waterSupplyId: true, monthChances: true },
      orderBy: { id: 'asc' },
      take: CHUNK,
    })
    for (const row of rows) {
      // A copy, since the driver's buffers need not begin at a multiple of four.
      const bytes = Uint8Array.from(row.monthChances)
      yield { runId: row.runId, asOfDay: dayOf(row.asOfDay), waterSupplyId: row.waterSupplyId, chances: new Float32Array(bytes.buffer) }
    }
    after = rows.at(-1)?.id
    if (rows.length < CHUNK) return
  }
}
