import type { BedInputs } from '@almanac/database/read/bed-inputs'
import type { BedForecastInput } from '@almanac/forecast/bed-forecast/bed-forecast-types'
import type { SupplyPeriod } from '@almanac/forecast/exposure/water-types'
import { oneOf } from '@almanac/records/choices'
import { disinfectants } from '@almanac/records/disinfectant'
import { measuringPoints } from '@almanac/records/measuring-point'
import { crosslinkOf } from '@almanac/records/resin-kind'

/** Indoor use a person and day, gallons: trade sizing rules use 60 to 80. Common practice, no source. */
const GALLONS_PER_PERSON_DAY = 60

type Periods = BedInputs['periods']

/** A supply's periods as the model takes them. */
export function supplyPeriods(periods: readonly Pick<Periods[number], Exclude<keyof Periods[number], 'waterSupplyId'>>[]): SupplyPeriod[] {
  return periods.map((period) => ({
    // "As far back as anyone knows" begins before any softener did.
    fromDay: period.fromDay ?? '1900-01-01',
    disinfectant: oneOf(disinfectants, period.disinfectant),
    disinfectantMgL: period.residualMgL,
    hardnessGpg: period.hardnessGpg,
    ironMgL: period.ironMgL,
    temperatureC: period.temperatureC,
  }))
}

/** A bed's record as the forecast model takes it. Nothing later than `asOfDay` is passed on. */
export function forecastInput(bed: BedInputs, asOfDay: string): BedForecastInput {
  return {
    asOfDay,
    beginning: { earliestDay: bed.beganEarliest, latestDay: bed.beganLatest },
    lastSeenDay: bed.lastSeenDay,
    crosslinkPercent: crosslinkOf(bed.resinKind),
    resinVolumeFt3: bed.volumeFt3,
    supply: bed.waterSupplyId,
    inspections: bed.inspections,
    gallonsPerDay: bed.peopleServed === null ? null : bed.peopleServed * GALLONS_PER_PERSON_DAY,
    water: {
      supplyPeriods: supplyPeriods(bed.periods),
      tests: bed.tests
        .filter((test) => test.day <= asOfDay)
        .map((test) => ({ ...test, point: oneOf(measuringPoints, test.point) ?? 'raw' })),
      preTreatments: bed.preTreatments.map((one) => ({
        ...one,
        kind: one.kind === 'carbon' || one.kind === 'iron-filter' ? one.kind : ('other' as const),
      })),
    },
  }
}
