import type { JobBed } from '@almanac/contract/jobs'
import { type JobKind, jobKindWords } from '@almanac/records/job-kind'
import { knownResinKind } from '@almanac/records/resin-kind'
import { drawBedThumb } from '@almanac/softener/drawing/bed-drawing'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { kitOfRecord } from '@almanac/softener/kit/kit-of-record'
import { formatTankSize, formatVolumeFt3 } from '@almanac/units/format'
import type { UnitSystem } from '@almanac/units/unit-system'
import { dayWords } from './clock-words.ts'

/** "Rebed", "Annual visit". */
export const kindWord = (kind: JobKind) => jobKindWords[kind]

/** "one person", "2 people". */
export const peopleWords = (count: number) => (count === 1 ? 'one person' : count === 2 ? 'two people' : `${count} people`)

/** A bed in a few words: "10 × 54 in, 1½ ft³"; null where nothing is known of it. */
export function bedWords(bed: JobBed, system: UnitSystem): string | null {
  const size = bed.diameterIn && bed.heightIn ? formatTankSize(bed.diameterIn, bed.heightIn, system) : bed.sizeAsWritten
  const volume = bed.volumeFt3 ? formatVolumeFt3(bed.volumeFt3, system) : null
  return [size, volume].filter(Boolean).join(', ') || null
}

/** The kit of the bed's rebed, or why it cannot be made up. */
export function kitOf(bed: JobBed, system: UnitSystem, figures: FirmFigures) {
  return kitOfRecord(bed, { figures, unitSystem: system })
}

/** The bed's small drawing; null where the tank's size is not known. */
export function thumbOf(bed: JobBed, system: UnitSystem, figures: FirmFigures) {
  const { diameterIn, heightIn, nominalGrains, gravelLb } = bed
  const drawn = drawBedThumb({
    ...{ diameterIn, heightIn, nominalGrains, gravelLb, figures, unitSystem: system },
    ...{ resinVolumeFt3: bed.volumeFt3, resinKind: knownResinKind(bed.resinKind) },
  })
  return drawn.ok ? drawn.value : null
}

/** When a job is due, as seen on a day: "overdue since 4 Nov 2026", "due by …", "due from …"; null without dates. */
export function dueWords(dueEarliest: string | null, dueLatest: string | null, day: string): string | null {
  if (dueLatest && dueLatest < day) return `overdue since ${dayWords(dueLatest)}`
  if (dueEarliest && dueEarliest > day) return `not due before ${dayWords(dueEarliest)}`
  if (dueLatest) return dueLatest === day ? 'due today' : `due by ${dayWords(dueLatest)}`
  return dueEarliest ? `due since ${dayWords(dueEarliest)}` : null
}

/** From when to when a job should be done: "3 Feb 2027 to 9 May 2031", or as far as it is known. */
export function windowWords(dueEarliest: string | null, dueLatest: string | null): string | null {
  if (dueEarliest && dueLatest)
    return dueEarliest === dueLatest ? dayWords(dueEarliest) : `${dayWords(dueEarliest)} to ${dayWords(dueLatest)}`
  if (dueLatest) return `by ${dayWords(dueLatest)}`
  return dueEarliest ? `from ${dayWords(dueEarliest)}` : null
}

/**
 * What another week of waiting adds to the chance that the bed fails first, as "0.6 %": a thirteenth of the chance of the next three months.
 * Only a rebed lowers that chance, so other kinds have none to tell.
 */
export function weekRisk(kind: JobKind, chance3Months: number | null): string | null {
  if (kind !== 'rebed' || chance3Months === null) return null
  const percent = (chance3Months / 13) * 100
  if (percent < 0.05) return null
  return `${percent < 1 ? percent.toFixed(1) : Math.round(percent)} %`
}

/** "each week of waiting: 0.6 % more risk". */
export function weekRiskWords(kind: JobKind, chance3Months: number | null): string | null {
  const risk = weekRisk(kind, chance3Months)
  return risk ? `each week of waiting: ${risk} more risk` : null
}
