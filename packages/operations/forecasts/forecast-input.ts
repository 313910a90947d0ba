import type { BedInputs } from '@almanac/database/read/bed-inputs'
import type { BedForecastInput } from '@almanac/forecast/bed-forecast/bed-forecast-types'
import type { ForecastSpeaking } from '@almanac/forecast/exposure/speaking'
import type { SupplyPeriod } from '@almanac/forecast/exposure/water-types'
import { oneOf } from '@almanac/records/choices'
import { disinfectants } from '@almanac/records/disinfectant'
import { measuringPoints } from '@almanac/records/measuring-point'
import { crosslinkOf } from '@almanac/records/resin-kind'
import { supplyGroup } from '@almanac/records/supply-kind'

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

/** Days up to `asOfDay` on which the bed was known to be working, the first first: work that left it running, inspections, and what was noted beside it. */
export function sightings(bed: BedInputs, asOfDay: string): string[] {
  const noted = [bed.firstSeenDay, bed.lastSeenDay, ...bed.workDays, ...bed.inspections.filter(foundWorking).map((one) => one.day)]
  const days = noted.filter((day) => day !== null && day <= asOfDay && (bed.beganEarliest === null || day >= bed.beganEarliest))
  return [...new Set(days as string[])].sort()
}

const foundWorking = (one: BedInputs['inspections'][number]) => one.beadCondition !== 'mushy' && one.beadCondition !== 'broken'

const contradicts = (bed: BedInputs) => bed.beganEarliest !== null && bed.lastSeenDay !== null && bed.lastSeenDay < bed.beganEarliest

const laterOf = (a: string | null, b: string | null) => (a === null || (b !== null && b > a) ? b : a)

/** The earliest day on which the bed before this one may have come out of the tank. */
function earlierBedEnded(bed: BedInputs, firstSeenDay: string | null, asOfDay: string): string | null {
  const bound = [bed.beganLatest, firstSeenDay, asOfDay].reduce<string>(
    (least, day) => (day !== null && day < least ? day : least),
    asOfDay,
  )
  const before = bed.otherEnds.filter((end) => end.latest <= bound).sort((a, b) => (a.latest < b.latest ? -1 : 1))
  const last = before.at(-1)
  return last ? (last.earliest ?? last.latest) : null
}

/** A bed's record as the forecast model takes it. Nothing later than `asOfDay` is passed on. `speaking` is how it is said; null where nobody reads its sentences. */
export function forecastInput(bed: BedInputs, asOfDay: string, speaking: ForecastSpeaking | null): BedForecastInput {
  const seen = sightings(bed, asOfDay)
  return {
    asOfDay,
    ...(speaking ? { speaking } : {}),
    beginning: { earliestDay: bed.beganEarliest, latestDay: bed.beganLatest },
    firstSeenDay: seen[0] ?? null,
    listedDay: bed.importedDay,
    earlierBedEndedDay: earlierBedEnded(bed, seen[0] ?? null, asOfDay),
    // A noted day before the bed went in is handed on, for the model to refuse with a sentence.
    lastSeenDay: contradicts(bed) ? bed.lastSeenDay : laterOf(bed.lastSeenDay, seen.at(-1) ?? null),
    customerCalls: true,
    crosslinkPercent: crosslinkOf(bed.resinKind),
    resinVolumeFt3: bed.volumeFt3,
    supply: supplyGroup(bed.waterSupplyId, bed.supplyKind),
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
