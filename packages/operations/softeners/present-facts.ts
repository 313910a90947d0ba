import type { BedFactChanges } from '@almanac/contract/beds'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'

/** The facts of a bed as they stand now, in the form a person sends them, so that both can be shown side by side. Only the keys asked for. */
export async function presentFacts(tx: Tx, companyId: string, bedId: string, asked: BedFactChanges): Promise<Record<string, unknown>> {
  const bed = await tx.bed.findFirst({
    where: { companyId, id: bedId },
    include: { tank: { include: { valves: { where: { archivedAt: null }, take: 1 } } } },
  })
  if (!bed) return {}
  const entered = bed.entered as Record<string, { value: number; unit: string } | undefined>
  const inUnit = (fact: string, value: number | null, unit: string) => (value === null ? null : (entered[fact] ?? { value, unit }))
  const valve = bed.tank.valves[0]
  const size = bed.tank.diameterIn !== null && bed.tank.heightIn !== null ? `${bed.tank.diameterIn}x${bed.tank.heightIn}` : ''
  const all: Record<keyof BedFactChanges, unknown> = {
    tankSize: bed.tank.sizeAsWritten ?? size,
    resinKind: bed.resinKind,
    volume: inUnit('volume', bed.volumeFt3, 'ft3'),
    gravel: inUnit('gravel', bed.gravelLb, 'lb'),
    tubeCut: inUnit('tubeCut', bed.tubeCutIn, 'in'),
    began: bed.beganAsWritten ?? dayOf(bed.beganEarliest) ?? '',
    lastSeenDay: dayOf(bed.lastSeenDay),
    backwash: valve?.backwashGpm == null ? null : { value: valve.backwashGpm, unit: 'gpm' },
  }
  return Object.fromEntries(Object.entries(all).filter(([fact]) => asked[fact as keyof BedFactChanges] !== undefined))
}
