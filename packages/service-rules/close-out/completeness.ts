import { outletReasonFits } from '@almanac/records/hard-outlet'
import type { JobKind } from '@almanac/records/job-kind'
import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import type { IsoDay } from '@almanac/units/calendar/day-number'
import type { AmountDisplay } from '@almanac/units/display'
import { formatHardnessGpg } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import type { Words } from '@almanac/words/words'
import type { TankRoom } from '../amounts/judge-in-tank.ts'
import { beginsNewBed, outcomeFacts } from '../jobs/visit-outcomes.ts'
import { missingBedFacts } from './bed-facts.ts'
import { requiredChecks } from './check-steps.ts'
import type { CloseOutRecord } from './close-out-form.ts'
import type { CloseOutWords } from './close-out-words.ts'
import { unlikelyAmounts } from './likely-amounts.ts'
import { wrongEnd } from './wrong-end.ts'

export interface CloseOutContext extends CloseOutWords {
  /** Hardness at the valve outlet must be below this, gpg: the firm's own figure. */
  outletLimitGpg: number
  display: AmountDisplay
  /** Today in the company's zone, by the clock of whoever judges; the work cannot have been later. */
  today?: IsoDay
  /** The first day on which the visit could have been; left out where nobody knows. */
  notBefore?: IsoDay
  /** The tank as recorded; left out where its size is not known. */
  tank?: TankRoom | null
  /** An earlier visit took the bed out: there is none to end. */
  emptied?: boolean
  /** Resin was poured before the work broke off, by the steps; left out where only the record is known. */
  filled?: boolean
}

/**
 * What a close-out still lacks, as plain sentences in the order in which the form asks; empty when the visit may be finished. The tablet
 * and the server both call this, so that what the one accepts without signal the other does not refuse later.
 */
export function missingForCloseOut(record: CloseOutRecord, context: CloseOutContext): string[] {
  const { words, outcomes } = context
  const amountWords = { words: context.amounts, names: context.amountNames, locale: context.display.locale }
  if (record.outcome === null) return [words('outcome')]
  const wrong = wrongEnd(record.outcome, record, context)
  if (wrong) return [wrong]
  const missing = [...missingDay(record, context), ...missingTimes(record, words)]
  const bedOpened = isBedOpened(record)
  const confirmed = new Set(record.checks.filter((check) => check.confirmed).map((check) => check.stepId))
  for (const step of requiredChecks(record.outcome, record.jobKind, bedOpened)) {
    if (!confirmed.has(step)) missing.push(words(step))
  }
  missing.push(...missingBedFacts(record, context))
  if (record.outcome === 'done' && (bedOpened || testsOutlet(record.jobKind)))
    missing.push(...missingOutletHardness(record, context, bedOpened))
  missing.push(...badNumbers(record, words), ...unlikelyAmounts(record, context.tank ?? null, amountWords))
  missing.push(...missingBeside(record, words))
  if (outcomeFacts[record.outcome].needsReason && record.reason.trim().length < 3) {
    missing.push(words('reason', { outcome: outcomes(record.outcome) }))
  }
  return missing
}

const LEAST_WORDS = 3

/** Another visit says what for, and extra work with whom it was agreed: the office has to be able to act on it. */
function missingBeside({ beside }: CloseOutRecord, words: Words<'lacking'>): string[] {
  const followUp = beside?.followUp && beside.followUp.what.trim().length < LEAST_WORDS ? [words('followUpWhat')] : []
  const extra = beside?.extra && beside.extra.agreedWith.trim() === '' ? [words('extraWith')] : []
  return [...followUp, ...extra]
}

/** True where the tank was, or must have been, opened: then pressure, cap and outlet matter. */
function isBedOpened(record: CloseOutRecord): boolean {
  if (record.outcome === 'done' && beginsNewBed(record.jobKind)) return true
  return record.oldBed?.takenOut === true || record.newBed !== null
}

function missingDay({ workDay }: CloseOutRecord, { today, notBefore, words, display }: CloseOutContext): string[] {
  if (!isIsoDay(workDay)) return [words('day')]
  if (today !== undefined && workDay > today) return [words('dayAhead', { day: formatDay(workDay, display) })]
  if (notBefore !== undefined && workDay < notBefore)
    return [words('dayBefore', { day: formatDay(workDay, display), first: formatDay(notBefore, display) })]
  return []
}

function missingTimes(record: CloseOutRecord, words: Words<'lacking'>): string[] {
  if (record.startedAt === null) return [words('started')]
  if (record.finishedAt === null) return [words('finished')]
  // Instants of one form (ISO, UTC) compare as text.
  return record.finishedAt < record.startedAt ? [words('turnedRound')] : []
}

/** Kinds whose "done" says that the softener softens, though its bed was not opened. */
const SOFTENS: readonly JobKind[] = ['cleaning', 'repair', 'warranty-return']

/** Whether "done" of a kind of job says something of the water at the outlet. */
export const testsOutlet = (kind: JobKind): boolean => beginsNewBed(kind) || SOFTENS.includes(kind)

function missingOutletHardness(record: CloseOutRecord, { outletLimitGpg, display, words }: CloseOutContext, needed: boolean): string[] {
  const measured = record.measurements.filter((measurement) => measurement.kind === 'outletHardnessGpg').at(-1)
  if (outletReasonFits(record.hardnessReason, measured !== undefined)) return []
  if (!measured) return needed ? [words('outletUntested')] : []
  if (measured.value < outletLimitGpg) return []
  return [
    words('outletHard', {
      measured: `${measured.enteredValue} ${measured.enteredUnit}`,
      limit: formatHardnessGpg(outletLimitGpg, display),
    }),
  ]
}

function badNumbers(record: CloseOutRecord, words: Words<'lacking'>): string[] {
  const missing: string[] = []
  for (const measurement of record.measurements) {
    if (!Number.isFinite(measurement.value) || measurement.value < 0) {
      missing.push(words('notNumber'))
    }
  }
  for (const part of record.partsUsed) {
    if (!Number.isFinite(part.quantity) || part.quantity <= 0) missing.push(words('partAmount', { part: part.name }))
  }
  return missing
}
