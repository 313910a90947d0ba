import { oneOf } from '@almanac/records/choices'
import type { EmptiedTank } from '@almanac/records/emptied-tank'
import { gravelsFound, tankConditions } from '@almanac/records/procedure-ask'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

type Check = { stepId?: unknown; note?: unknown }

const noted = (checks: readonly Check[], ask: string): string => {
  const note = checks.find((one) => one.stepId === ask)?.note
  return typeof note === 'string' ? note : ''
}

/** What an earlier visit found of a job's tank where it took the bed out and made safe, and no bed has gone in since; null for every other. */
export async function readEmptied(tx: Tx, companyId: string, bedId: string | null): Promise<EmptiedTank | null> {
  if (!bedId) return null
  const bed = await tx.bed.findUnique({
    where: { companyId_id: { companyId, id: bedId } },
    select: {
      tankId: true,
      tubeCutIn: true,
      endedLatest: true,
      endedVisit: { select: { outcome: true, notes: true, closeOut: true } },
    },
  })
  const day = dayOf(bed?.endedLatest ?? null)
  if (!bed || day === null || bed.endedVisit?.outcome !== 'made-safe') return null
  const since = await tx.bed.findFirst({
    where: { companyId, tankId: bed.tankId, endedLatest: null, archivedAt: null },
    select: { id: true },
  })
  if (since) return null
  const { checks = [] } = (bed.endedVisit.closeOut ?? {}) as { checks?: Check[] }
  return {
    day,
    found: bed.endedVisit.notes,
    tubeIn: bed.tubeCutIn,
    gravel: oneOf(gravelsFound, noted(checks, 'gravel-found')),
    condition: oneOf(tankConditions, noted(checks, 'tank-condition')),
  }
}
