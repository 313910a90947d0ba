import type { JobKind } from '@almanac/records/job-kind'
import type { VisitOutcome } from '@almanac/records/visit-outcome'

/** Steps of the procedure that a close-out cannot do without. A procedure shown to the technician carries these ids at its steps. */
export const checkSteps = [
  'bypass-proven',
  'pressure-zero',
  'cap-out-counted',
  'outlet-tested',
  'leaks-checked',
  'bypass-returned',
  'left-in-bypass',
  'customer-told',
] as const
export type CheckStepId = (typeof checkSteps)[number]

/** Which of them an outcome needs: a bed was opened, the softener only worked on, or nothing touched. */
export function requiredChecks(outcome: VisitOutcome, kind: JobKind, bedOpened: boolean): CheckStepId[] {
  if (outcome === 'no-access') return []
  if (outcome === 'left-as-found') return ['customer-told']
  if (outcome === 'made-safe' || outcome === 'condemned') {
    // A new softener has no old pressure to let out, here as below.
    return bedOpened && kind !== 'installation'
      ? ['bypass-proven', 'pressure-zero', 'left-in-bypass', 'customer-told']
      : ['left-in-bypass', 'customer-told']
  }
  if (outcome === 'bed-not-at-fault') return ['customer-told', 'bypass-returned']
  if (kind === 'installation') return ['cap-out-counted', 'outlet-tested', 'leaks-checked', 'bypass-returned']
  if (!bedOpened) return kind === 'delivery' ? [] : ['leaks-checked', 'bypass-returned']
  return ['bypass-proven', 'pressure-zero', 'cap-out-counted', 'outlet-tested', 'leaks-checked', 'bypass-returned']
}
