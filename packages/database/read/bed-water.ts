import type { BedWater } from '@almanac/records/bed-facts'
import type { RecordedDisinfectant } from '@almanac/records/disinfectant'
import type { SupplyKind } from '@almanac/records/supply-kind'
import type { Tx } from '../client.ts'

/** Periods looked back through for a temperature, which a notice of new water seldom gives. */
const PERIODS = 12

type Place = { siteId: string; waterSupplyId: string | null; softenerId: string | null }
type Water = BedWater & { hardnessGpg: number | null; disinfectant: RecordedDisinfectant | null }

/** The water that reaches a softener: hardness and iron as last measured before it, else as its supply gives them now. */
export async function readBedWater(tx: Tx, companyId: string, { siteId, waterSupplyId, softenerId }: Place): Promise<Water> {
  const supply = waterSupplyId
    ? await tx.waterSupply.findFirst({
        where: { companyId, id: waterSupplyId },
        include: { periods: { where: { withdrawnAt: null }, orderBy: { fromDay: { sort: 'desc', nulls: 'last' } }, take: PERIODS } },
      })
    : null
  const period = supply?.periods[0]
  const test = softenerId ? await latestTest(tx, companyId, siteId, softenerId) : null
  return {
    source: (supply?.kind as SupplyKind | undefined) ?? null,
    hardnessGpg: test?.hardnessGpg ?? period?.hardnessGpg ?? null,
    ironMgL: test?.ironMgL ?? period?.ironMgL ?? null,
    temperatureC: supply?.periods.find((one) => one.temperatureC !== null)?.temperatureC ?? null,
    disinfectant: (period?.disinfectant as RecordedDisinfectant | undefined) ?? null,
  }
}

/** Hardness and iron before the softener as last measured there; a test without hardness says nothing of it. */
function latestTest(tx: Tx, companyId: string, siteId: string, softenerId: string) {
  return tx.waterTest.findFirst({
    where: {
      ...{ companyId, siteId, withdrawnAt: null, hardnessGpg: { not: null } },
      ...{ point: { in: ['raw', 'softener-inlet'] }, OR: [{ softenerId: null }, { softenerId }] },
    },
    orderBy: [{ day: 'desc' }, { id: 'desc' }],
    select: { hardnessGpg: true, ironMgL: true },
  })
}
