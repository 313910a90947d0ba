import type { BedHistory } from '@almanac/database/read/bed-records'
import type { BedRecord, LifeEnd } from '@almanac/forecast/fit/bed-record'
import type { EndCause } from '@almanac/records/end-cause'
import { lifeEvidence } from '@almanac/service-rules/close-out/life-evidence'
import { forecastInput, sightings } from './forecast-input.ts'

function causeOf(bed: BedHistory): LifeEnd {
  if (bed.endedOnJob === 'warranty-return') return 'workmanship'
  const cause = (bed.endCause ?? 'unknown') as EndCause
  if (lifeEvidence[cause] === 'failed') return 'failed'
  if (lifeEvidence[cause] === 'unclear') return 'unknown'
  return cause === 'removed-for-convenience' ? 'removed-early' : 'other'
}

const latest = (days: readonly string[]): string | null =>
  days.reduce<string | null>((max, day) => (max === null || day > max ? day : max), null)

/**
 * A bed's history as the fit takes it. The day it came under the firm's eyes is its beginning where the firm put it in (its visit, or the bed before it in
 * the same tank is on record); else the first day anybody of the firm is known to have been there: a bed taken over at ten years says nothing of those that
 * failed before; one that came with a list and was never seen counts from the list's day. Null for a bed met only when it had failed, which says nothing at all.
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
    listedDay: own ? null : bed.importedDay,
    end: ended === null ? null : endOf(bed, ended, lastSeenDay),
  }
}

/** From the last time it was seen working; a bed taken out for another reason worked until then. */
function endOf(bed: BedHistory, ended: string, lastSeenDay: string | null): NonNullable<BedRecord['end']> {
  const cause = causeOf(bed)
  const known = [lastSeenDay, bed.beganLatest ?? bed.beganEarliest].filter((day) => day !== null && day <= ended)
  const mayHaveFailed = cause === 'failed' || cause === 'unknown'
  const worked = mayHaveFailed ? (latest(known as string[]) ?? ended) : ended
  // The customer's own word dates the failure, unless somebody saw the bed working after: then it was something else. They called.
  const heard = mayHaveFailed && bed.heardHard && bed.heardHard.latest >= worked && bed.heardHard.earliest <= ended ? bed.heardHard : null
  if (heard) {
    const earliestDay = heard.earliest > worked ? heard.earliest : worked
    const latestDay = heard.latest < ended ? heard.latest : ended
    return { earliestDay, latestDay, cause, outFromDay: latestDay, found: 'call' }
  }
  return {
    earliestDay: worked,
    latestDay: ended,
    cause,
    outFromDay: bed.endedEarliest,
    found: bed.endedOnJob === 'emergency' ? 'call' : null,
  }
}
