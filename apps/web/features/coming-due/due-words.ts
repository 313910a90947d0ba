import type { DueBed } from '@almanac/contract/due'
import { shortResinKindWords } from '@almanac/records/resin-kind'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { thumbOf } from '@almanac/softener/rebed/thumb-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { type DayDisplay, formatMonths } from '@almanac/units/format-day'
import { bedWords } from '@/client/bed-facts-words'

/** The bed's facts in the shape that the small drawing and the words take. */
function factsOf({ bedId, tank, volumeFt3, gravelLb, resinKind }: DueBed) {
  const { diameterIn, heightIn, nominalGrains, sizeAsWritten } = tank
  return { bedId, diameterIn, heightIn, nominalGrains, sizeAsWritten, volumeFt3, gravelLb, resinKind }
}

function beganWords(bed: DueBed): string {
  const written = bed.beganAsWritten ?? bed.beganLatest
  if (!written) return 'install date unknown'
  return /^\d{4}-\d\d-\d\d$/.test(written) ? written.slice(0, 4) : written
}

/** "10 × 54 in, 1½ ft³, 8%, 2012" */
export function dueBedWords(bed: DueBed, display: AmountDisplay): string {
  const size = bedWords(factsOf(bed), display) ?? 'tank size unknown'
  return [bed.tank.twin ? `twin ${size}` : size, shortResinKindWords[bed.resinKind], beganWords(bed)].join(', ')
}

export const dueThumb = (bed: DueBed, firm: RebedFirm) => thumbOf(factsOf(bed), firm)

/** Why the levelled plan gave a bed its month: the months it could choose from. */
export function plannedWhy({ earliestMonth, latestMonth }: NonNullable<DueBed['planned']>, display: DayDisplay): string {
  return earliestMonth === latestMonth
    ? 'its chance passes your limit this month'
    : `${formatMonths(earliestMonth, latestMonth, display)} keeps to your limit`
}
