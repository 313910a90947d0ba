import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

const CHUNK = 2_000

export type BedMonths = {
  bedId: string
  runId: string
  asOfDay: string
  waterSupplyId: string | null
  chanceAlreadyFailed: number
  /** Chances in 65,535ths, node by node. */
  chances: Uint16Array
}

/** Every bed's stored month chances, page by page in id order, so that a large company does not stand in memory at once. */
export async function* readMonthChances(tx: Tx, companyId: string): AsyncGenerator<BedMonths> {
  let after: string | undefined
  for (;;) {
    const rows = await tx.bedForecast.findMany({
      where: { companyId, ...(after ? { id: { gt: after } } : {}) },
      select: { id: true, bedId: true, runId: true, asOfDay: true, waterSupplyId: true, chanceAlreadyFailed: true, monthChances: true },
      orderBy: { id: 'asc' },
      take: CHUNK,
    })
    for (const row of rows) {
      const { monthChances, chanceAlreadyFailed, asOfDay, id: _id, ...rest } = row
      // A copy, since the driver's buffers need not begin at a multiple of two.
      const bytes = Uint8Array.from(monthChances)
      yield { ...rest, asOfDay: dayOf(asOfDay), chanceAlreadyFailed: chanceAlreadyFailed ?? 0, chances: new Uint16Array(bytes.buffer) }
    }
    after = rows.at(-1)?.id
    if (rows.length < CHUNK) return
  }
}
