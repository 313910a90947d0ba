import type { Tx } from '../client.ts'

const CHUNK = 2_000

/** What a rebed of each bed in service takes: its tank's size, resin and gravel as recorded. By bed. */
export async function readRebedSizes(tx: Tx, companyId: string) {
  const sizes = new Map<string, { diameterIn: number | null; volumeFt3: number | null; gravelLb: number | null }>()
  let after: string | undefined
  for (;;) {
    const beds = await tx.bed.findMany({
      where: { companyId, endedLatest: null, archivedAt: null, ...(after ? { id: { gt: after } } : {}) },
      select: { id: true, volumeFt3: true, gravelLb: true, tank: { select: { diameterIn: true } } },
      orderBy: { id: 'asc' },
      take: CHUNK,
    })
    for (const { id, volumeFt3, gravelLb, tank } of beds) sizes.set(id, { diameterIn: tank.diameterIn, volumeFt3, gravelLb })
    after = beds.at(-1)?.id
    if (beds.length < CHUNK) return sizes
  }
}
