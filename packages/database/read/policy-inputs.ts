import type { SupplyKind } from '@almanac/records/supply-kind'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { IN_SERVICE } from './in-service.ts'

/** What the page "Best age to rebed" is worked out from: costs as set, supplies, one supply's history, how often beads were lost, how many beds are watched. */
export async function readPolicyInputs(tx: Tx, companyId: string, asked: string | null) {
  const settings = await tx.companySettings.findFirst({
    where: { companyId },
    select: { plannedRebedMinor: true, failureMinor: true, beadsMinor: true },
  })
  const supplies = await tx.waterSupply.findMany({
    where: { companyId, archivedAt: null, kind: 'town' },
    select: { id: true, name: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: 100,
  })
  const largest = await tx.bedForecast.groupBy({
    by: ['waterSupplyId'],
    where: { companyId, waterSupplyId: { in: supplies.map((one) => one.id) }, bed: IN_SERVICE },
    _count: true,
    orderBy: { _count: { waterSupplyId: 'desc' } },
    take: 1,
  })
  const waterSupplyId = asked ?? largest[0]?.waterSupplyId ?? supplies[0]?.id ?? null
  const periods = await tx.supplyPeriod.findMany({
    where: { companyId, waterSupplyId: waterSupplyId ?? undefined, withdrawnAt: null, ...(waterSupplyId ? {} : { id: { in: [] } }) },
    select: { fromDay: true, disinfectant: true, residualMgL: true, hardnessGpg: true, ironMgL: true, temperatureC: true },
    orderBy: { fromDay: { sort: 'asc', nulls: 'first' } },
  })
  const ended = await tx.bed.groupBy({ by: ['endCause'], where: { companyId, archivedAt: null, endedLatest: { not: null } }, _count: true })
  const count = (cause: string) => ended.find((one) => one.endCause === cause)?._count ?? 0
  const bedsWatched = await tx.bedForecast.count({
    where: { companyId, due50Day: { not: null }, bed: IN_SERVICE, ...(waterSupplyId ? { waterSupplyId } : {}) },
  })
  const supply = waterSupplyId
    ? await tx.waterSupply.findUnique({ where: { companyId_id: { companyId, id: waterSupplyId } }, select: { name: true, kind: true } })
    : null
  return {
    waterSupplyId,
    settings,
    supplies,
    supplyName: supply?.name ?? null,
    supplyKind: (supply?.kind as SupplyKind | undefined) ?? null,
    periods: periods.map((period) => ({ ...period, fromDay: dayOf(period.fromDay) })),
    endedBeds: ended.reduce((sum, one) => sum + one._count, 0),
    beadsLost: count('beads-lost'),
    bedsWatched,
  }
}
