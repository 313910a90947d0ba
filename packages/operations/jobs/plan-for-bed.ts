import { type JobKind, jobKindFacts, usualRebedMinutes } from '@almanac/service-rules/jobs/job-kinds'
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
 * Minutes on site and people to plan a job with. A rebed's length goes by the tank's diameter and its crew by the weight to carry; where the
 * tank is not known, and for the other kinds, the kind's usual figures stand.
 */
export function planForBed(
  kind: JobKind,
  bed: BedOnRecord | null,
  unitSystem: UnitSystem,
  figures: FirmFigures,
): { minutes: number; crewSize: number } {
  const usual = jobKindFacts[kind]
  if (kind !== 'rebed' || !bed) return { minutes: usual.usualMinutes, crewSize: usual.usualCrew }
  const kit = kitOfRecord({ ...bed.tank, ...bed }, { figures, unitSystem })
  return { minutes: usualRebedMinutes(bed.tank.diameterIn), crewSize: kit.ok ? kit.value.crewSize : usual.usualCrew }
}
