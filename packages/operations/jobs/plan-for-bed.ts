import { type JobKind, jobKindFacts, usualRebedMinutes } from '@almanac/service-rules/jobs/job-kinds'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { rebedKit } from '@almanac/softener/kit/rebed-kit'
import type { ResinKindId } from '@almanac/softener/resin/resin-kinds'
import type { UnitSystem } from '@almanac/units/unit-system'

/** What is on record of the bed a job is for. */
export type BedOnRecord = {
  resinKind: string
  volumeFt3: number | null
  gravelLb: number | null
  tank: { diameterIn: number | null; heightIn: number | null; nominalGrains: number | null }
}

const RESIN: Record<string, ResinKindId> = { 'gel-8': 'gel-8', 'gel-10': 'gel-10', 'fine-mesh': 'fine-8' }

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
  const { diameterIn, heightIn, nominalGrains } = bed.tank
  const kit = rebedKit({
    diameterIn,
    heightIn,
    nominalGrains,
    resinVolumeFt3: bed.volumeFt3,
    resinKind: RESIN[bed.resinKind] ?? null,
    gravelLb: bed.gravelLb,
    figures,
    unitSystem,
  })
  return { minutes: usualRebedMinutes(diameterIn), crewSize: kit.ok ? kit.value.crewSize : usual.usualCrew }
}
