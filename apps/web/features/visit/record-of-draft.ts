import type { VisitPage } from '@almanac/contract/visits'
import type { EndCause } from '@almanac/records/end-cause'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { CloseOutRecord, NewBedFacts } from '@almanac/service-rules/close-out/close-out-form'
import { checksFrom, measurementsFrom } from '@almanac/service-rules/close-out/record-from-answers'
import type { UnitSystem } from '@almanac/units/unit-system'
import { readTyped } from '@/client/typed-quantity'
import type { PartLine, ShownDraft } from './draft.ts'
import { changesBed } from './procedure-of.ts'

const NO_NUMBER = Number.NaN

/** A quantity typed plainly, "2" or "1,5"; not a number where it is none, which the completeness rules then name. */
const plain = (text: string) => (text.trim() === '' ? NO_NUMBER : Number(text.trim().replace(',', '.')))

function newBedOf(draft: ShownDraft, units: UnitSystem): NewBedFacts | null {
  if (!draft.resinKind || !draft.volume.trim()) return null
  const volumeUnit = draft.volumeUnit || (units === 'us' ? 'ft3' : 'L')
  const volume = readTyped(draft.volume, volumeUnit, 'ft3').value
  const gravel = draft.gravel.trim() === '' ? 0 : readTyped(draft.gravel, draft.gravelUnit || (units === 'us' ? 'lb' : 'kg'), 'lb').value
  const tube = readTyped(draft.tube, draft.tubeUnit || (units === 'us' ? 'in' : 'cm'), 'in').value
  return {
    resinKind: draft.resinKind as NewBedFacts['resinKind'],
    volumeFt3: volume ?? NO_NUMBER,
    enteredVolume: { value: plain(draft.volume), unit: volumeUnit === 'L' ? 'L' : 'ft3' },
    gravelLb: gravel ?? NO_NUMBER,
    tubeCutIn: tube,
  }
}

/** The close-out record that the form amounts to; its completeness is judged by the service rules. `now` stands in where the steps were never left. */
export function recordOf(visit: VisitPage, draft: ShownDraft, parts: PartLine[], now: string, units: UnitSystem): CloseOutRecord {
  const outcome = (draft.outcome || null) as VisitOutcome | null
  const withBed = changesBed(visit.kind) || draft.takenOut
  const fills = outcome === 'done' && changesBed(visit.kind)
  return {
    visitId: visit.visitId,
    jobKind: visit.kind,
    outcome,
    workDay: draft.workDay,
    startedAt: draft.startedAt,
    finishedAt: draft.finishedAt ?? now,
    checks: checksFrom(draft.answers, visit.kind !== 'rebed'),
    measurements: measurementsFrom(draft.answers),
    partsUsed:
      outcome === 'no-access'
        ? []
        : parts
            .filter((part) => part.quantity.trim() !== '' && plain(part.quantity) !== 0)
            .map(({ stockItemId, name, quantity, unit }) => ({ stockItemId, name, quantity: plain(quantity), unit })),
    oldBed:
      withBed && outcome !== 'no-access' && outcome !== 'bed-not-at-fault'
        ? { takenOut: draft.takenOut, endCause: (draft.endCause || null) as EndCause | null, evidence: draft.evidence }
        : null,
    newBed: fills ? newBedOf(draft, units) : null,
    reason: draft.reason,
    hardnessReason: draft.hardnessReason,
    notes: draft.notes,
  }
}
