import type { BedLine, TankLine } from '@almanac/contract/site-facts'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { thumbOf } from '@almanac/softener/rebed/thumb-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { formatTankSize, formatVolumeFt3 } from '@almanac/units/format'
import { type DayDisplay, formatDay, formatMonths } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'

type Tank = Pick<TankLine, 'diameterIn' | 'heightIn' | 'nominalGrains' | 'sizeAsWritten'>

/** What is said of tanks, beds and their times, in one language and one company's units. */
export function bedTexts(display: AmountDisplay & DayDisplay, words: Words<'bedFacts'>, kinds: Words<'resinKind'>) {
  /** "10 × 54 in", or the size as it was written, or that it is not known. */
  const tank = ({ diameterIn, heightIn, sizeAsWritten, nominalGrains }: Tank): string => {
    if (diameterIn && heightIn) return formatTankSize(diameterIn, heightIn, display)
    if (sizeAsWritten) return sizeAsWritten
    return nominalGrains ? words('grain', { count: showWhole(nominalGrains, display) }) : words('sizeUnknown')
  }
  /** "1½ ft³, 8% crosslink"; null where neither is known. */
  const resin = ({ volumeFt3, resinKind }: Pick<BedLine, 'resinKind' | 'volumeFt3'>): string | null => {
    const parts = [volumeFt3 === null ? null : formatVolumeFt3(volumeFt3, display), resinKind === 'unknown' ? null : kinds(resinKind)]
    return parts.filter(Boolean).join(', ') || null
  }
  /** A span of days in the fewest words: "May 3, 2019", "2014", "Mar – Jun 2012", or as it was written; null where nothing is known. */
  const span = (earliest: string | null, latest: string | null, asWritten?: string | null): string | null => {
    if (asWritten && !/^\d{4}-\d\d-\d\d$/.test(asWritten)) return asWritten
    if (earliest === null && latest === null) return null
    if (earliest === null) return words('by', { day: formatDay(latest ?? '', display) })
    if (latest === null) return words('sinceOrLater', { day: formatDay(earliest, display) })
    if (earliest === latest) return formatDay(earliest, display)
    const [from, to] = [earliest.slice(0, 4), latest.slice(0, 4)]
    if (earliest.endsWith('-01-01') && latest.endsWith('-12-31')) return from === to ? from : words('years', { from, to })
    return formatMonths(earliest, latest, display)
  }
  /** When a bed began. */
  const began = (bed: Pick<BedLine, 'beganEarliest' | 'beganLatest' | 'beganAsWritten'>) =>
    span(bed.beganEarliest, bed.beganLatest, bed.beganAsWritten)
  return { tank, resin, span, began }
}
export type BedTexts = ReturnType<typeof bedTexts>

/** A bed in a few words: "10 × 54 in, 1½ ft³"; null where nothing is known of it. */
export function bedWords(bed: Tank & Pick<BedLine, 'volumeFt3'>, display: AmountDisplay): string | null {
  const size = bed.diameterIn && bed.heightIn ? formatTankSize(bed.diameterIn, bed.heightIn, display) : bed.sizeAsWritten
  const volume = bed.volumeFt3 ? formatVolumeFt3(bed.volumeFt3, display) : null
  return [size, volume].filter(Boolean).join(', ') || null
}

/** A tank of a list drawn small; null where its size is not known. */
export const thumbOfTank = (tank: Tank, bed: Pick<BedLine, 'resinKind' | 'volumeFt3'> | undefined, firm: RebedFirm) =>
  thumbOf({ ...tank, gravelLb: null, volumeFt3: bed?.volumeFt3 ?? null, resinKind: bed?.resinKind ?? 'unknown' }, firm)

/** The axis that ribbons of one page share: a year back, fifteen ahead. */
export function ribbonAxis(today: string) {
  const year = Number(today.slice(0, 4))
  const rest = today.slice(4).replace('-02-29', '-02-28')
  return { from: `${year - 1}${rest}`, until: `${year + 15}${rest}`, today }
}
