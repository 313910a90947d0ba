import type { Tx } from '../client.ts'

/** Whether the firm learns together with others, and if so the newest figures of each other firm that does; nothing says whose they are. */
export async function readPooledFits(tx: Tx, companyId: string): Promise<{ optedIn: boolean; others: unknown[] }> {
  const settings = await tx.companySettings.findFirst({ where: { companyId }, select: { poolFits: true } })
  if (!settings?.poolFits) return { optedIn: false, others: [] }
  const rows = await tx.$queryRaw<{ figures: unknown }[]>`select almanac_pooled_fits() as figures`
  return { optedIn: true, others: rows.map((row) => row.figures) }
}
