import type { BedHistory } from '@almanac/database/read/bed-records'
import type { BedRecord, LifeEnd } from '@almanac/forecast/fit/bed-record'
import type { EndCause } from '@almanac/records/end-cause'
import { lifeEvidence } from '@almanac/service-rules/close-out/life-evidence'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { forecastInput, sightings } from './forecast-input.ts'

/**
 * A bed that fails gives hard water, which a household notices within months; a bed rebedded as worn had failed at most so long before. Common
 * practice, no source.
 */
const NOTICED_WITHIN_DAYS = 183

function causeOf(bed: BedHistory): LifeEnd {
  if (bed.endedOnJob === 'warranty-return') return 'workmanship'
  const cause = (bed.endCause ?? 'unknown') as EndCause
  // Nearly every rebed whose reason nobody wrote down was for a worn bed. Common practice, no source; the owner's page says so.
  if (lifeEvidence[cause] !== 'outlived') return 'failed'
  return cause === 'removed-for-convenience' ? 'removed-early' : 'other'
}

const latest = (days: readonly string[]): string | null =>
  days.reduce<string | null>((max, day) => (max === null || day > max ? day : max), null)

/**
 * A bed's history as the fit takes it. The day it came under the firm's eyes is its beginning where the firm put it in (its visit, or the bed before it in
 * the same tank is on record); else the first day anybody of the firm is known to have been there: a bed taken over at ten years says nothing of those that
 * failed before. Null for a bed met only when it had failed, which says nothing at all.
 */
export function bedRecord(bed: BedHistory): BedRecord | null {
  const { asOfDay: _day, ...input } = forecastInput(bed, '9999-12-31', null)
  const ended = bed.endedLatest
  const began = bed.beganLatest ?? bed.beganEarliest
  const seen = sightings(bed, '9999-12-31').filter((day) => ended === null || day < ended)
  const own = bed.beganVisitId !== null || (began !== null && bed.otherEnds.some((end) => end.latest <= began))
  const firstSeenDay = own ? null : (seen[0] ?? null)
  if (!own && firstSeenDay === null && ended !== null) return null
  const lastSeenDay = seen.at(-1) ?? null
  return {
    ...input,
    firstSeenDay,
    lastSeenDay,
    visitDays: seen,
    end: ended === null ? null : { earliestDay: failedFrom(bed, ended, lastSeenDay), latestDay: ended, cause: causeOf(bed) },
  }
}

/** First day of the stretch in which it failed: as recorded; for a known day of removal the last time seen working, or when the household noticed. */
function failedFrom(bed: BedHistory, ended: string, lastSeenDay: string | null): string {
  if (bed.endedEarliest !== null && bed.endedEarliest < ended) return bed.endedEarliest
  if (causeOf(bed) !== 'failed') return ended
  return latest([addDays(ended, -NOTICED_WITHIN_DAYS), ...[lastSeenDay, bed.beganLatest].filter((day) => day !== null)]) ?? ended
}
