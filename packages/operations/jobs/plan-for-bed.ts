import type { JobKind } from '@almanac/records/job-kind'
import { jobKindFacts } from '@almanac/service-rules/jobs/job-kinds'
import type { Duration } from '@almanac/service-rules/jobs/learn-durations'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { kitOfRecord } from '@almanac/softener/kit/kit-of-record'
import type { UnitSystem } from '@almanac/units/unit-system'

/** What is on record of the bed a job is for. */
export type BedOnRecord = {
  resinKind: string
  volumeFt3: number | null
  gravelLb: number | null
  tank: { diameterIn: number | null; heightIn: number | null; nominalGrains: number | null }
}

/**
 * Minutes on site and people to plan a job with. The length is the middle of what such visits take this firm, by kind and for a rebed by the
 * tank's diameter; its crew goes by the weight to carry, where the tank is known.
 */
export function planForBed(
  kind: JobKind,
  bed: BedOnRecord | null,
  unitSystem: UnitSystem,
  figures: FirmFigures,
  lengthOf: (kind: JobKind, diameterIn: number | null) => Duration,
): { minutes: number; crewSize: number } {
  const usual = jobKindFacts[kind]
  const minutes = lengthOf(kind, bed?.tank.diameterIn ?? null).middle
  if (kind !== 'rebed' || !bed) return { minutes, crewSize: usual.usualCrew }
  const kit = kitOfRecord({ ...bed.tank, ...bed }, { figures, unitSystem })
  return { minutes, crewSize: kit.ok ? kit.value.crewSize : usual.usualCrew }
}
