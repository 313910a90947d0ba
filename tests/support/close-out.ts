import type { CloseOutInput } from '@almanac/contract/visits'
import { inCompany } from '@almanac/database/in-company'
import { DAY } from './records.ts'
import type { FirmRecords } from './two-firms.ts'

export const ticked = (...stepIds: string[]) => stepIds.map((stepId) => ({ stepId, confirmed: true }))
/** A full rebed: what a crew hands in when all went well. */
export const rebedRecord = (firm: FirmRecords, more: Partial<CloseOutInput> = {}): CloseOutInput => ({
  visitId: firm.rebedVisitId,
  jobKind: 'rebed',
  outcome: 'done',
  workDay: DAY,
  startedAt: `${DAY}T18:00:00.000Z`,
  finishedAt: `${DAY}T19:40:00.000Z`,
  checks: ticked('bypass-proven', 'pressure-zero', 'cap-out-counted', 'outlet-tested', 'leaks-checked', 'bypass-returned'),
  measurements: [{ kind: 'outletHardnessGpg', value: 0.5, enteredValue: 0.5, enteredUnit: 'gpg' }],
  partsUsed: [{ stockItemId: firm.stockItemId, name: 'Resin 10%', quantity: 2, unit: 'resin-bag' }],
  oldBed: { takenOut: true, endCause: 'worn', evidence: 'soft beads' },
  newBed: { resinKind: 'gel-10', volumeFt3: 1.5, enteredVolume: { value: 42.5, unit: 'L' }, gravelLb: 18, tubeCutIn: 53.5 },
  ...{ reason: '', hardnessReason: '', notes: '' },
  ...more,
})

/** What a close-out touches. */
export const readClosed = (firm: FirmRecords) =>
  inCompany(firm, async (tx) => ({
    beds: await tx.bed.findMany({ where: { tankId: firm.rebedTankId }, orderBy: { beganLatest: 'asc' } }),
    job: await tx.job.findFirst({ where: { id: firm.rebedJobId } }),
    visit: await tx.visit.findFirst({ where: { id: firm.rebedVisitId } }),
    tests: await tx.waterTest.findMany({ where: { visitId: firm.rebedVisitId } }),
    movements: await tx.movement.findMany({ where: { visitId: firm.rebedVisitId } }),
    item: await tx.stockItem.findFirst({ where: { id: firm.stockItemId } }),
    gaps: await tx.discrepancy.findMany({ where: { id: { not: firm.discrepancyId } } }),
    softener: await tx.softener.findFirst({ where: { id: firm.rebedSoftenerId } }),
  }))
