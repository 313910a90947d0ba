import { DAYS_PER_YEAR, isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { percentInSentence } from '@almanac/units/format-number'
import { type Refusal, refuse } from '@almanac/units/result'
import { type BedTraits, REFERENCE } from '../exposure/acceleration.ts'
import { type TracedSegment, traceWater } from '../exposure/water-history.ts'
import { dayWriter } from '../exposure/write-day.ts'
import { CALLED_AFTER_DAYS } from '../fit/record-ways.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import type { BedForecastInput } from './bed-forecast-types.ts'

/** How far back an unknown beginning may reach, and no farther than this many times the years by which the firm's other beds had begun before it met them. */
const UNKNOWN_BEGINNING_YEARS = 20
const TIMES_USUAL = 4

/** The input as day numbers, with the gaps filled and each filling named. */
export interface ReadBed {
  readonly ok: true
  readonly asOf: number
  readonly earliest: number
  readonly latest: number
  /** A beginning so many days before `latest` is e times less likely; Infinity: each day as likely as another. */
  readonly backDays: number
  readonly lastSeen: number
  readonly lastSeenKnown: boolean
  /** Day up to which it works if its household is one that calls, for it has not; null where nobody would or the day last seen is later. */
  readonly unheardUntil: number | null
  readonly crosslinkKnown: boolean
  readonly traits: BedTraits
  readonly supply: string | null
  readonly segments: readonly TracedSegment[]
  readonly assumptions: readonly string[]
  readonly missing: readonly string[]
  /** A day number as the sentences write it. */
  readonly writeDay: (day: number) => string
}

/** Checks the facts against each other; contradictions are refused with a sentence, gaps are filled and named. */
export function readInput(input: BedForecastInput, parameters: ForecastParameters): ReadBed | Refusal {
  const assumptions: string[] = []
  const missing: string[] = []
  const write = dayWriter(input.display)
  const writeDay = (day: number) => write(isoDay(day))
  const asOf = parseDay(input.asOfDay)
  if (asOf === null) return refuse(`The day of the forecast, “${input.asOfDay}”, is no real date. Give a day of the calendar.`)
  const seen = readDay(input.lastSeenDay)
  if (seen === undefined) return refuse(`The day last seen, “${input.lastSeenDay}”, isn’t a real date. Correct it.`)
  if (seen !== null && seen > asOf)
    return refuse(`The bed was last seen on ${writeDay(seen)}, which is after ${writeDay(asOf)}. Correct the day last seen.`)
  const beginning = readBeginning(input, seen, asOf, parameters.yearsBeforeMet ?? Number.POSITIVE_INFINITY, {
    assumptions,
    missing,
    writeDay,
  })
  if (!beginning.ok) return beginning
  const { earliest, latest, backDays } = beginning
  const lastSeen = seen ?? latest
  if (seen === null) {
    missing.push('Not seen since it went in.')
    assumptions.push(`We assume the bed worked on ${writeDay(lastSeen)} and is uncertain from then on.`)
  }
  if (input.customerCalls === true && asOf - CALLED_AFTER_DAYS > lastSeen)
    assumptions.push('Most households call when the water turns hard. This one has not, so the bed probably works.')
  const traits = readTraits(input, assumptions, missing)
  if (!traits.ok) return traits
  const water = traceWater(input.water, earliest, asOf, parameters.assumedWater, write)
  if (!water.ok) return water
  return {
    ok: true,
    asOf,
    earliest,
    latest,
    backDays,
    lastSeen,
    lastSeenKnown: seen !== null,
    unheardUntil: input.customerCalls === true && asOf - CALLED_AFTER_DAYS > lastSeen ? asOf - CALLED_AFTER_DAYS : null,
    crosslinkKnown: input.crosslinkPercent !== null,
    traits: traits.traits,
    supply: input.supply ?? null,
    segments: water.segments,
    assumptions: assumptions.concat(water.assumptions),
    missing: missing.concat(water.missing),
    writeDay,
  }
}

/** undefined: text that is no date. */
function readDay(day: string | null): number | null | undefined {
  if (day === null) return null
  return parseDay(day) ?? undefined
}

interface ReadBeginning {
  readonly ok: true
  readonly earliest: number
  readonly latest: number
  readonly backDays: number
}

function readBeginning(
  input: BedForecastInput,
  seen: number | null,
  asOf: number,
  yearsBeforeMet: number,
  { assumptions, missing, writeDay }: { assumptions: string[]; missing: string[]; writeDay: ReadBed['writeDay'] },
): ReadBeginning | Refusal {
  const from = readDay(input.beginning.earliestDay)
  const to = readDay(input.beginning.latestDay)
  if (from === undefined || to === undefined)
    return refuse('The install date isn’t a real date. Correct it, or leave it blank if nobody knows.')
  if (from !== null && to !== null && from > to) {
    return refuse(
      `The bed went in between ${writeDay(from)} and ${writeDay(to)}: the first date is later than the second. Swap or correct them.`,
    )
  }
  if (from !== null && from > asOf)
    return refuse(`The resin is installed on ${writeDay(from)}, after the day of this forecast. It has no forecast before that day.`)
  if (from !== null && seen !== null && from > seen) {
    return refuse(
      `The bed was last seen on ${writeDay(seen)} but went in only on ${writeDay(from)}. One of the two dates must be wrong. Correct it.`,
    )
  }
  const first = readDay(input.firstSeenDay ?? null)
  const before = readDay(input.earlierBedEndedDay ?? null)
  const listed = readDay(input.listedDay ?? null)
  if (first === undefined || before === undefined || listed === undefined)
    return refuse('The day the bed was first seen, or the bed before it came out, isn’t a real date. Correct it.')
  // What was seen before this bed can have gone in was the bed before it.
  const seenFirst = first !== null && first <= asOf && (from === null || first >= from) ? Math.min(first, seen ?? first) : seen
  // On a list it stood already, though nobody has seen it since.
  const bound = seenFirst ?? (listed !== null && listed <= asOf && (from === null || listed >= from) ? listed : asOf)
  const latest = Math.min(to ?? bound, bound)
  const predecessor = before !== null && before <= latest ? before : null
  const back = Math.min(UNKNOWN_BEGINNING_YEARS, TIMES_USUAL * yearsBeforeMet)
  const earliest = Math.max(from ?? Math.round(latest - back * DAYS_PER_YEAR), predecessor ?? Number.NEGATIVE_INFINITY)
  if (from === null && predecessor !== null)
    assumptions.push(`The bed went in after the one before it came out, on ${writeDay(predecessor)} at the earliest.`)
  else if (from === null) {
    const how = Number.isFinite(yearsBeforeMet) ? 'late rather than early, as with the other beds you took over' : 'each day equally likely'
    assumptions.push(`We assume the resin was installed between ${writeDay(earliest)} and ${writeDay(latest)}, ${how}.`)
  }
  if (to !== null && to > bound)
    assumptions.push(`The resin can’t have been installed after ${writeDay(bound)}; so that’s the last possible day.`)
  const width = (latest - earliest) / DAYS_PER_YEAR
  if (from === null && to === null && predecessor === null) missing.push('The install date is unknown.')
  else if (width > 1 / 12)
    missing.push(`The install date is known only within ${width < 1.5 ? 'about a year or less' : `${Math.round(width)} years`}.`)
  const backDays = from === null && predecessor === null ? yearsBeforeMet * DAYS_PER_YEAR : Number.POSITIVE_INFINITY
  return { ok: true, earliest, latest, backDays }
}

function readTraits(input: BedForecastInput, assumptions: string[], missing: string[]): { ok: true; traits: BedTraits } | Refusal {
  let crosslinkPercent = input.crosslinkPercent
  if (crosslinkPercent === null) {
    crosslinkPercent = REFERENCE.crosslinkPercent
    assumptions.push('We assume the resin is 8% crosslink.')
    missing.push('Resin crosslink not recorded.')
  } else if (!(crosslinkPercent >= 2 && crosslinkPercent <= 20)) {
    return refuse(
      `A crosslink of ${percentInSentence(crosslinkPercent / 100, 1)} can’t be right; softener resin has 8 or 10%. Correct it or leave it blank.`,
    )
  }
  const { gallonsPerDay, resinVolumeFt3 } = input
  if (resinVolumeFt3 !== null && !(resinVolumeFt3 > 0))
    return refuse(`A resin volume of ${resinVolumeFt3} ft³ can’t be right. Correct it or leave it blank.`)
  if (gallonsPerDay !== null && !(gallonsPerDay >= 0))
    return refuse(`A water use of ${gallonsPerDay} gal/day can’t be right. Correct it or leave it blank.`)
  if (gallonsPerDay === null || resinVolumeFt3 === null) {
    assumptions.push(`We assume usual household water use: ${REFERENCE.gallonsPerDayPerFt3} gal/day per ft³ of resin.`)
    return { ok: true, traits: { crosslinkPercent, gallonsPerDayPerFt3: null } }
  }
  // An idle house still ages its bed; a tenth to ten times the usual use is as far as the power law is trusted.
  const use = Math.min(Math.max(gallonsPerDay / resinVolumeFt3, REFERENCE.gallonsPerDayPerFt3 / 10), REFERENCE.gallonsPerDayPerFt3 * 10)
  return { ok: true, traits: { crosslinkPercent, gallonsPerDayPerFt3: use } }
}
