import { beginsNewBed } from '../jobs/visit-outcomes.ts'
import type { CloseOutRecord, NewBedFacts } from './close-out-form.ts'

/** What the record still lacks about the bed that came out and the one that went in, and what in it contradicts the outcome. */
export function missingBedFacts(record: CloseOutRecord): string[] {
  const { outcome, oldBed, newBed } = record
  const opened = oldBed?.takenOut === true
  if (outcome === 'no-access' && (opened || newBed))
    return ['No access, yet a bed is recorded as changed. Choose another outcome or clear the bed.']
  if (outcome === 'bed-not-at-fault' && (opened || newBed)) {
    return ['The bed was not the fault, yet it is recorded as taken out. Choose "Done", or clear the bed.']
  }
  const missing: string[] = []
  if (outcome === 'condemned' && newBed)
    missing.push('A condemned tank cannot hold a new bed. Clear the new bed or choose another outcome.')
  if (outcome === 'done' && record.jobKind === 'rebed' && !opened) missing.push('Confirm that the old bed was taken out.')
  if (opened || outcome === 'condemned' || (outcome === 'done' && record.jobKind === 'rebed')) missing.push(...missingEnd(record))
  if (outcome === 'done' && beginsNewBed(record.jobKind) && !newBed) {
    missing.push('Give the facts of the new bed: resin, volume, gravel, length of the tube.')
  }
  if (newBed) missing.push(...missingNewBed(newBed, record))
  return missing
}

function missingEnd(record: CloseOutRecord): string[] {
  if (!record.oldBed?.endCause) return ['Choose why the old bed ended; "not known" is an answer too.']
  if (record.oldBed.endCause !== 'unknown' && record.oldBed.evidence.trim() === '') {
    return ['Write what shows why the old bed ended, such as soft beads or an orange rinse.']
  }
  return []
}

function missingNewBed(newBed: NewBedFacts, record: CloseOutRecord): string[] {
  const missing: string[] = []
  if (!isPositive(newBed.volumeFt3)) missing.push('Give the volume of the new resin, more than zero.')
  if (!Number.isFinite(newBed.gravelLb) || newBed.gravelLb < 0) missing.push('Give the weight of gravel put in; zero where there is none.')
  if (newBed.tubeCutIn === null || !isPositive(newBed.tubeCutIn)) missing.push('Give the length the distributor tube was cut to.')
  if (record.partsUsed.length === 0) missing.push('List the parts used, the resin at least.')
  return missing
}

function isPositive(value: number): boolean {
  return Number.isFinite(value) && value > 0
}
