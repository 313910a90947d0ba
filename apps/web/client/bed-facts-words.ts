import type { BedLine, TankLine } from '@almanac/contract/site-facts'
import { resinKindWords } from '@almanac/records/resin-kind'
import { type RebedFirm, thumbOf } from '@almanac/softener/rebed/rebed-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { formatTankSize, formatVolumeFt3 } from '@almanac/units/format'
import { type DayDisplay, formatDay, formatMonths } from '@almanac/units/format-day'
import { withUnit } from '@almanac/units/format-number'

type Tank = Pick<TankLine, 'diameterIn' | 'heightIn' | 'nominalGrains' | 'sizeAsWritten'>

/** "10 × 54 in", or the size as it was written, or that it is not known. */
export function tankWords(tank: Tank, display: AmountDisplay): string {
  if (tank.diameterIn && tank.heightIn) return formatTankSize(tank.diameterIn, tank.heightIn, display)
  if (tank.sizeAsWritten) return tank.sizeAsWritten
  return tank.nominalGrains ? withUnit(tank.nominalGrains, 0, 'grain', display) : 'tank size not known'
}

/** A bed in a few words: "10 × 54 in, 1½ ft³"; null where nothing is known of it. */
export function bedWords(bed: Tank & Pick<BedLine, 'volumeFt3'>, display: AmountDisplay): string | null {
  const size = bed.diameterIn && bed.heightIn ? formatTankSize(bed.diameterIn, bed.heightIn, display) : bed.sizeAsWritten
  const volume = bed.volumeFt3 ? formatVolumeFt3(bed.volumeFt3, display) : null
  return [size, volume].filter(Boolean).join(', ') || null
}

/** "1½ ft³, 8% crosslink"; null where neither is known. */
export function resinWords(bed: Pick<BedLine, 'resinKind' | 'volumeFt3'>, display: AmountDisplay): string | null {
  const parts = [
    bed.volumeFt3 === null ? null : formatVolumeFt3(bed.volumeFt3, display),
    bed.resinKind === 'unknown' ? null : resinKindWords[bed.resinKind],
  ]
  return parts.filter(Boolean).join(', ') || null
}

/** A span of days in the fewest words: "May 3, 2019", "2014", "Mar – Jun 2012", or as it was written; null where nothing is known. */
export function spanWords(earliest: string | null, latest: string | null, display: DayDisplay, asWritten?: string | null): string | null {
  if (asWritten && !/^\d{4}-\d\d-\d\d$/.test(asWritten)) return asWritten
  if (earliest === null && latest === null) return null
  if (earliest === null) return `by ${formatDay(latest ?? '', display)}`
  if (latest === null) return `since ${formatDay(earliest, display)} or later`
  if (earliest === latest) return formatDay(earliest, display)
  const [from, to] = [earliest.slice(0, 4), latest.slice(0, 4)]
  if (earliest.endsWith('-01-01') && latest.endsWith('-12-31')) return from === to ? from : `${from} to ${to}`
  return formatMonths(earliest, latest, display)
}

/** When a bed began. */
export const beganWords = (bed: Pick<BedLine, 'beganEarliest' | 'beganLatest' | 'beganAsWritten'>, display: DayDisplay) =>
  spanWords(bed.beganEarliest, bed.beganLatest, display, bed.beganAsWritten)

/** A tank of a list drawn small; null where its size is not known. */
export const thumbOfTank = (tank: Tank, bed: Pick<BedLine, 'resinKind' | 'volumeFt3'> | undefined, firm: RebedFirm) =>
  thumbOf({ ...tank, gravelLb: null, volumeFt3: bed?.volumeFt3 ?? null, resinKind: bed?.resinKind ?? 'unknown' }, firm)

/** The axis that ribbons of one page share: a year back, fifteen ahead. */
export function ribbonAxis(today: string) {
  const year = Number(today.slice(0, 4))
  const rest = today.slice(4).replace('-02-29', '-02-28')
  return { from: `${year - 1}${rest}`, until: `${year + 15}${rest}`, today }
}
