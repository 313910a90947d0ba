import type { BedFacts } from '@almanac/records/bed-facts'
import { type JobKind, renewsBed } from '@almanac/records/job-kind'
import { jobKindFacts } from '@almanac/service-rules/jobs/job-kinds'
import type { Duration } from '@almanac/service-rules/jobs/learn-durations'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { rebedFirm } from '../shared/rebed-firm.ts'

/**
 * Minutes on site and people to plan a job with. The length is the middle of what such visits take this firm, by kind and for a rebed by the
 * tank's diameter; the crew of a rebed or an exchange goes by the weight to carry, where the tank is known.
 */
export function planForBed(
  kind: JobKind,
  bed: BedFacts | null,
  display: AmountDisplay,
  figures: FirmFigures,
  lengthOf: (kind: JobKind, diameterIn: number | null) => Duration,
): { minutes: number; crewSize: number } {
  const usual = jobKindFacts[kind]
  const minutes = lengthOf(kind, bed?.diameterIn ?? null).middle
  if (!renewsBed(kind) || !bed) return { minutes, crewSize: usual.usualCrew }
  const kit = kitOf(bed, rebedFirm(figures, display))
  return { minutes, crewSize: kit.ok ? kit.value.crewSize : usual.usualCrew }
}
