import type { VisitPage } from '@almanac/contract/visits'
import { type BesideVisit, followUpKinds } from '@almanac/records/beside-visit'
import { oneOf } from '@almanac/records/choices'
import type { EndCause } from '@almanac/records/end-cause'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { CloseOutRecord, NewBedFacts } from '@almanac/service-rules/close-out/close-out-form'
import { checksFrom, measurementsFrom } from '@almanac/service-rules/close-out/record-from-answers'
import { beginsNewBed } from '@almanac/service-rules/jobs/visit-outcomes'
import { stockRule } from '@almanac/units/amount-kinds'
import { type AmountReading, readAmount } from '@almanac/units/read-amount'
import type { PartLine, ShownDraft } from './draft.ts'
import { isEmptied } from './procedure-of.ts'
import { readOnSite, type VisitReading } from './visit-amounts.ts'

const NO_NUMBER = Number.NaN

/** What was used of a part; not a number where it is none or was cleared, which the completeness rules then name. */
function quantityOf({ quantity, unit }: PartLine, locale: string): number {
  const reading = readAmount(stockRule(unit), quantity, { locale })
  return reading.state === 'read' ? reading.value : NO_NUMBER
}

function newBedOf(draft: ShownDraft, by: VisitReading): NewBedFacts | null {
  const volume = readOnSite('resin', draft.volume, draft.volumeUnit, by)
  if (!draft.resinKind || volume.state === 'empty') return null
  const gravel = readOnSite('gravel', draft.gravel, draft.gravelUnit, by)
  const tube = readOnSite('tube', draft.tube, draft.tubeUnit, by)
  const value = (reading: AmountReading) => (reading.state === 'read' ? reading.value : NO_NUMBER)
  const reasons = { volume: [volume, draft.volumeWhy], gravel: [gravel, draft.gravelWhy], tubeCut: [tube, draft.tubeWhy] } as const
  const why = Object.entries(reasons).flatMap(([name, [reading, reason]]) =>
    reading.state === 'read' && reading.odd !== null && reason.trim().length >= 3 ? [[name, reason.trim()] as const] : [],
  )
  return {
    resinKind: draft.resinKind as NewBedFacts['resinKind'],
    volumeFt3: value(volume),
    enteredVolume:
      volume.state === 'read' && volume.entered.unit === 'L'
        ? { value: volume.entered.value, unit: 'L' }
        : { value: value(volume), unit: 'ft3' },
    gravelLb: gravel.state === 'empty' ? 0 : value(gravel),
    tubeCutIn: tube.state === 'empty' ? null : value(tube),
    ...(why.length > 0 ? { why: Object.fromEntries(why) } : {}),
  }
}

/** Whether a new bed lies in the tank at such an end: the work is done, or it broke off after the resin was poured, which then stays in. */
export const fillsBed = (kind: VisitPage['kind'], { outcome, answers }: Pick<ShownDraft, 'outcome' | 'answers'>): boolean =>
  beginsNewBed(kind) && (outcome === 'done' || (outcome === 'made-safe' && (answers['resin-ft3']?.text.trim() ?? '') !== ''))

/** What is told beside the outcome; nothing of what was left blank. */
function besideOf({ others, followUpKind, followUpWhat, extraWork, extraWith }: ShownDraft): BesideVisit {
  const kind = oneOf(followUpKinds, followUpKind)
  return {
    others: others.trim(),
    followUp: kind && { kind, what: followUpWhat.trim() },
    extra: extraWork.trim() ? { what: extraWork.trim(), agreedWith: extraWith.trim() } : null,
  }
}

/** The close-out record that the form amounts to; its completeness is judged by the service rules. */
export function recordOf(visit: VisitPage, draft: ShownDraft, parts: PartLine[], by: VisitReading): CloseOutRecord {
  const outcome = (draft.outcome || null) as VisitOutcome | null
  const withBed =
    !isEmptied(visit) && ((beginsNewBed(visit.kind) && visit.kind !== 'installation') || draft.takenOut || outcome === 'condemned')
  return {
    visitId: visit.visitId,
    jobKind: visit.kind,
    outcome,
    workDay: draft.workDay,
    startedAt: draft.startedAt,
    finishedAt: draft.finishedAt,
    checks: checksFrom(draft.answers, visit.kind !== 'rebed'),
    measurements: measurementsFrom(draft.answers),
    partsUsed:
      outcome === 'no-access' || outcome === 'left-as-found'
        ? []
        : parts
            .map((part) => ({ ...part, quantity: quantityOf(part, by.locale) }))
            .filter((part) => part.quantity !== 0)
            .map(({ stockItemId, name, quantity, unit, why }) => ({
              stockItemId,
              name,
              quantity,
              unit,
              ...(why?.trim() ? { why: why.trim() } : {}),
            })),
    oldBed:
      withBed && outcome !== 'no-access' && outcome !== 'left-as-found' && outcome !== 'bed-not-at-fault'
        ? { takenOut: draft.takenOut, endCause: (draft.endCause || null) as EndCause | null, evidence: draft.evidence }
        : null,
    newBed: fillsBed(visit.kind, draft) ? newBedOf(draft, by) : null,
    reason: draft.reason,
    hardnessReason: draft.hardnessReason,
    notes: draft.notes,
    beside: besideOf(draft),
  }
}
