import { visitOutcomeWords } from '@almanac/records/visit-outcome'
import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import type { IsoDay } from '@almanac/units/calendar/day-number'
import type { AmountDisplay } from '@almanac/units/display'
import { formatHardnessGpg } from '@almanac/units/format'
import type { TankRoom } from '../amounts/judge-in-tank.ts'
import { longDay } from '../calendar/day-words.ts'
import { beginsNewBed, outcomeFacts } from '../jobs/visit-outcomes.ts'
import { missingBedFacts } from './bed-facts.ts'
import { checkSentences, requiredChecks } from './check-steps.ts'
import type { CloseOutRecord } from './close-out-form.ts'
import { unlikelyAmounts } from './likely-amounts.ts'

export interface CloseOutContext {
  /** Hardness at the valve outlet must be below this, gpg: the firm's own figure. */
  outletLimitGpg: number
  display: AmountDisplay
  /** Today in the company's zone, by the clock of whoever judges; the work cannot have been later. */
  today?: IsoDay
  /** The first day on which the visit could have been; left out where nobody knows. */
  notBefore?: IsoDay
  /** The tank as recorded; left out where its size is not known. */
  tank?: TankRoom | null
}

/**
 * What a close-out still lacks, as plain sentences in the order in which the form asks; empty when the visit may be finished. The tablet
 * and the server both call this, so that what the one accepts without signal the other does not refuse later.
 */
export function missingForCloseOut(record: CloseOutRecord, context: CloseOutContext): string[] {
  if (record.outcome === null) return ['Choose how the visit ended.']
  const missing = [...missingDay(record, context), ...missingTimes(record)]
  const bedOpened = isBedOpened(record)
  const confirmed = new Set(record.checks.filter((check) => check.confirmed).map((check) => check.stepId))
  for (const step of requiredChecks(record.outcome, record.jobKind, bedOpened)) {
    if (!confirmed.has(step)) missing.push(checkSentences[step])
  }
  missing.push(...missingBedFacts(record))
  if (record.outcome === 'done' && bedOpened) missing.push(...missingOutletHardness(record, context))
  missing.push(...badNumbers(record), ...unlikelyAmounts(record, context.tank ?? null))
  if (outcomeFacts[record.outcome].needsReason && record.reason.trim().length < 3) {
    missing.push(`Write what was found: "${visitOutcomeWords[record.outcome]}" needs a reason.`)
  }
  return missing
}

/** True where the tank was, or must have been, opened: then pressure, cap and outlet matter. */
function isBedOpened(record: CloseOutRecord): boolean {
  if (record.outcome === 'done' && beginsNewBed(record.jobKind)) return true
  return record.oldBed?.takenOut === true || record.newBed !== null
}

function missingDay({ workDay }: CloseOutRecord, { today, notBefore }: CloseOutContext): string[] {
  if (!isIsoDay(workDay)) return ['Give the day of the work.']
  if (today !== undefined && workDay > today)
    return [`The work cannot have been done on ${longDay(workDay)}: that day has not come. Correct the day.`]
  if (notBefore !== undefined && workDay < notBefore)
    return [`The work cannot have been done on ${longDay(workDay)}: the job was first recorded on ${longDay(notBefore)}. Correct the day.`]
  return []
}

function missingTimes(record: CloseOutRecord): string[] {
  if (record.startedAt === null) return ['Give the time the visit started.']
  if (record.finishedAt === null) return ['Give the time the visit finished.']
  // Instants of one form (ISO, UTC) compare as text.
  return record.finishedAt < record.startedAt ? ['The visit finishes before it starts. Correct one of the times.'] : []
}

function missingOutletHardness(record: CloseOutRecord, { outletLimitGpg, display }: CloseOutContext): string[] {
  if (record.hardnessReason.trim().length >= 3) return []
  const measured = record.measurements.filter((measurement) => measurement.kind === 'outletHardnessGpg').at(-1)
  if (!measured) return ['Measure the hardness at the valve outlet, or write why it could not be measured.']
  if (measured.value < outletLimitGpg) return []
  return [
    `The hardness at the valve outlet is ${measured.enteredValue} ${measured.enteredUnit}; it should be below ${formatHardnessGpg(outletLimitGpg, display)}. Measure again or write why it stands higher.`,
  ]
}

function badNumbers(record: CloseOutRecord): string[] {
  const missing: string[] = []
  for (const measurement of record.measurements) {
    if (!Number.isFinite(measurement.value) || measurement.value < 0) {
      missing.push('A measurement is not a number of zero or more. Type it again or take it out.')
    }
  }
  for (const part of record.partsUsed) {
    if (!Number.isFinite(part.quantity) || part.quantity <= 0) missing.push(`Give how much of "${part.name}" was used, more than zero.`)
  }
  return missing
}
