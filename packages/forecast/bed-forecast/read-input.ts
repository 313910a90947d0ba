import { DAYS_PER_YEAR, isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { type Refusal, refuse } from '@almanac/units/result'
import { type BedTraits, REFERENCE } from '../exposure/acceleration.ts'
import { type Saying, sayingOf } from '../exposure/speaking.ts'
import { type TracedSegment, traceWater } from '../exposure/water-history.ts'
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
  readonly saying: Saying
}

/** Checks the facts against each other; contradictions are refused with a sentence, gaps are filled and named. */
export function readInput(input: BedForecastInput, parameters: ForecastParameters): ReadBed | Refusal {
  const assumptions: string[] = []
  const missing: string[] = []
  const saying = sayingOf(input.speaking)
  const { say } = saying
  const writeDay = (day: number) => saying.day(isoDay(day))
  const asOf = parseDay(input.asOfDay)
  if (asOf === null) return refuse(say('no/day', { day: input.asOfDay }))
  const seen = readDay(input.lastSeenDay)
  if (seen === undefined) return refuse(say('no/seen', { day: input.lastSeenDay ?? '' }))
  if (seen !== null && seen > asOf) return refuse(say('no/seenLater', { seen: writeDay(seen), today: writeDay(asOf) }))
  const beginning = readBeginning(input, seen, asOf, parameters.yearsBeforeMet ?? Number.POSITIVE_INFINITY, {
    assumptions,
    missing,
    writeDay,
    say,
  })
  if (!beginning.ok) return beginning
  const { earliest, latest, backDays } = beginning
  const lastSeen = seen ?? latest
  if (seen === null) {
    missing.push(say('neverSeen'))
    assumptions.push(say('workedOn', { day: writeDay(lastSeen) }))
  }
  if (input.customerCalls === true && asOf - CALLED_AFTER_DAYS > lastSeen) assumptions.push(say('wouldCall'))
  const traits = readTraits(input, assumptions, missing, saying)
  if (!traits.ok) return traits
  const water = traceWater(input.water, earliest, asOf, parameters.assumedWater, saying)
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
    saying,
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
  {
    assumptions,
    missing,
    writeDay,
    say,
  }: { assumptions: string[]; missing: string[]; writeDay: ReadBed['writeDay'] } & Pick<Saying, 'say'>,
): ReadBeginning | Refusal {
  const from = readDay(input.beginning.earliestDay)
  const to = readDay(input.beginning.latestDay)
  if (from === undefined || to === undefined) return refuse(say('no/installed'))
  if (from !== null && to !== null && from > to) {
    return refuse(say('no/installedTurned', { from: writeDay(from), to: writeDay(to) }))
  }
  if (from !== null && from > asOf) return refuse(say('no/installedLater', { day: writeDay(from) }))
  if (from !== null && seen !== null && from > seen) {
    return refuse(say('no/seenBefore', { seen: writeDay(seen), from: writeDay(from) }))
  }
  const first = readDay(input.firstSeenDay ?? null)
  const before = readDay(input.earlierBedEndedDay ?? null)
  const listed = readDay(input.listedDay ?? null)
  if (first === undefined || before === undefined || listed === undefined) return refuse(say('no/firstSeen'))
  // What was seen before this bed can have gone in was the bed before it.
  const seenFirst = first !== null && first <= asOf && (from === null || first >= from) ? Math.min(first, seen ?? first) : seen
  // On a list it stood already, though nobody has seen it since.
  const bound = seenFirst ?? (listed !== null && listed <= asOf && (from === null || listed >= from) ? listed : asOf)
  const latest = Math.min(to ?? bound, bound)
  const predecessor = before !== null && before <= latest ? before : null
  const back = Math.min(UNKNOWN_BEGINNING_YEARS, TIMES_USUAL * yearsBeforeMet)
  const earliest = Math.max(from ?? Math.round(latest - back * DAYS_PER_YEAR), predecessor ?? Number.NEGATIVE_INFINITY)
  if (from === null && predecessor !== null) assumptions.push(say('afterEarlier', { day: writeDay(predecessor) }))
  else if (from === null) {
    const span = { from: writeDay(earliest), to: writeDay(latest) }
    assumptions.push(say(Number.isFinite(yearsBeforeMet) ? 'installedLate' : 'installedEven', span))
  }
  if (to !== null && to > bound) assumptions.push(say('notAfter', { day: writeDay(bound) }))
  const width = (latest - earliest) / DAYS_PER_YEAR
  if (from === null && to === null && predecessor === null) missing.push(say('noInstallDate'))
  else if (width > 1 / 12) missing.push(width < 1.5 ? say('withinYear') : say('withinYears', { years: String(Math.round(width)) }))
  const backDays = from === null && predecessor === null ? yearsBeforeMet * DAYS_PER_YEAR : Number.POSITIVE_INFINITY
  return { ok: true, earliest, latest, backDays }
}

function readTraits(
  input: BedForecastInput,
  assumptions: string[],
  missing: string[],
  { say, amount, share }: Saying,
): { ok: true; traits: BedTraits } | Refusal {
  let crosslinkPercent = input.crosslinkPercent
  if (crosslinkPercent === null) {
    crosslinkPercent = REFERENCE.crosslinkPercent
    assumptions.push(say('crosslinkAssumed'))
    missing.push(say('crosslinkMissing'))
  } else if (!(crosslinkPercent >= 2 && crosslinkPercent <= 20)) {
    return refuse(say('no/crosslink', { share: share(crosslinkPercent / 100, 1) }))
  }
  const { gallonsPerDay, resinVolumeFt3 } = input
  if (resinVolumeFt3 !== null && !(resinVolumeFt3 > 0)) return refuse(say('no/volume', { value: amount(resinVolumeFt3) }))
  if (gallonsPerDay !== null && !(gallonsPerDay >= 0)) return refuse(say('no/use', { value: amount(gallonsPerDay) }))
  if (gallonsPerDay === null || resinVolumeFt3 === null) {
    assumptions.push(say('usualUse', { gallons: String(REFERENCE.gallonsPerDayPerFt3) }))
    return { ok: true, traits: { crosslinkPercent, gallonsPerDayPerFt3: null } }
  }
  // An idle house still ages its bed; a tenth to ten times the usual use is as far as the power law is trusted.
  const use = Math.min(Math.max(gallonsPerDay / resinVolumeFt3, REFERENCE.gallonsPerDayPerFt3 / 10), REFERENCE.gallonsPerDayPerFt3 * 10)
  return { ok: true, traits: { crosslinkPercent, gallonsPerDayPerFt3: use } }
}
