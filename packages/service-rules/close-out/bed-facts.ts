import { renewsBed } from '@almanac/records/job-kind'
import type { Words } from '@almanac/words/words'
import { beginsNewBed } from '../jobs/visit-outcomes.ts'
import type { CloseOutRecord, NewBedFacts } from './close-out-form.ts'
import type { CloseOutWords } from './close-out-words.ts'

/** What the record still lacks about the bed that came out and the one that went in, and what in it contradicts the outcome. */
export function missingBedFacts(
  record: CloseOutRecord,
  { words, outcomes, emptied = false, filled = false }: CloseOutWords & { emptied?: boolean; filled?: boolean },
): string[] {
  const { outcome, oldBed, newBed } = record
  const opened = oldBed?.takenOut === true
  if ((outcome === 'no-access' || outcome === 'left-as-found') && (opened || newBed)) return [words('noAccessBed')]
  if (outcome === 'bed-not-at-fault' && (opened || newBed)) {
    return [words('notAtFaultBed', { done: outcomes('done') })]
  }
  // A softener without a bed is not done, whatever else was put right.
  if (outcome === 'done' && opened && !newBed && !beginsNewBed(record.jobKind))
    return [words('noNewBed', { madeSafe: outcomes('made-safe') })]
  const missing: string[] = []
  if (outcome === 'condemned' && newBed) missing.push(words('condemnedBed'))
  const endsBed = !emptied && (outcome === 'condemned' || (outcome === 'done' && renewsBed(record.jobKind)))
  if (endsBed && outcome === 'done' && !opened) missing.push(words('takenOut'))
  if (opened || endsBed) missing.push(...missingEnd(record, words))
  const begins = (outcome === 'done' && beginsNewBed(record.jobKind)) || (outcome === 'made-safe' && filled)
  if (begins && !newBed) {
    missing.push(words('newBed'))
  }
  if (newBed) missing.push(...missingNewBed(newBed, record, words))
  return missing
}

function missingEnd(record: CloseOutRecord, words: Words<'lacking'>): string[] {
  if (!record.oldBed?.endCause) return [words('endCause')]
  if (record.oldBed.endCause !== 'unknown' && record.oldBed.evidence.trim() === '') {
    return [words('evidence')]
  }
  return []
}

function missingNewBed(newBed: NewBedFacts, record: CloseOutRecord, words: Words<'lacking'>): string[] {
  const missing: string[] = []
  if (!isPositive(newBed.volumeFt3)) missing.push(words('volume'))
  if (!Number.isFinite(newBed.gravelLb) || newBed.gravelLb < 0) missing.push(words('gravel'))
  // A softener or tank that is brought may come filled, with a tube that nobody sees.
  const unseen = (record.jobKind === 'installation' || record.jobKind === 'exchange') && newBed.tubeCutIn === null
  if (!unseen && !(newBed.tubeCutIn !== null && isPositive(newBed.tubeCutIn))) missing.push(words('tube'))
  if (record.partsUsed.length === 0) missing.push(words('parts'))
  return missing
}

function isPositive(value: number): boolean {
  return Number.isFinite(value) && value > 0
}
