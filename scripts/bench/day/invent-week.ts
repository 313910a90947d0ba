import type { Board, BoardJob, Sheet } from '@almanac/dispatch/propose/board'
import { UNCALIBRATED } from '@almanac/dispatch/travel/estimate-leg'
import { travelTable } from '@almanac/dispatch/travel/travel-table'
import { boardPrices } from '@almanac/operations/jobs/plan-prices'
import type { JobKind } from '@almanac/records/job-kind'
import { learnDurations, spreadOf } from '@almanac/service-rules/jobs/learn-durations'

/** Five working days without a change of clocks. */
const DATES = ['2026-11-30', '2026-12-01', '2026-12-02', '2026-12-03', '2026-12-04']
export const DAY_FROM = 480
export const DAY_TO = 1020
/** How much of the crews' hours the week's work and its drives come to, by the app's own lengths: a week that is busy and fits. Ours, no source. */
const BUSY = 0.7
const MINUTES_OF_DRIVE = 18
const MILES_PER_DEGREE = 69.09
/** What a firm does, by how often. Ours, no source. */
const MIX: readonly (readonly [JobKind, number])[] = [
  ['annual-visit', 0.3],
  ['rebed', 0.2],
  ['repair', 0.25],
  ['cleaning', 0.15],
  ['inspection', 0.1],
]
const YARD = { lat: 41.72, lon: -88.44 }

/** How long the app believes visits to take, from common practice alone: its middle, and the spread of the logarithm that its eight of ten comes from. */
export function believed(kind: JobKind): { minutes: number; spread: number } {
  const { middle, longer } = learnDurations([])(kind, kind === 'rebed' ? 10 : null)
  // Eight of ten lie below 0.8416 standard deviations (Abramowitz and Stegun, table 26.5).
  return { minutes: middle, spread: Math.log(longer / middle) / 0.8416 }
}

/** An empty week of a firm with so many crews, one in four of them one person, and the jobs that wait for it in towns around its yard. */
export function inventWeek(crews: number, chance: () => number): { board: Board; kinds: ReadonlyMap<string, JobKind> } {
  const near = (middle: typeof YARD, miles: number) => {
    const [angle, far] = [2 * Math.PI * chance(), miles * Math.sqrt(chance())]
    const lat = middle.lat + (far * Math.sin(angle)) / MILES_PER_DEGREE
    return { lat, lon: middle.lon + (far * Math.cos(angle)) / (MILES_PER_DEGREE * Math.cos((middle.lat * Math.PI) / 180)) }
  }
  const towns = Array.from({ length: 4 + Math.round(crews / 2) }, () => near(YARD, 14))
  const places = [{ id: 'yard', at: YARD }]
  const jobs: BoardJob[] = []
  const kinds = new Map<string, JobKind>()
  const most = BUSY * crews * DATES.length * (DAY_TO - DAY_FROM)
  for (let sum = 0; sum < most; ) {
    const at = chance()
    const kind = MIX.find((_, n) => MIX.slice(0, n + 1).reduce((all, [, share]) => all + share, 0) > at)?.[0] ?? 'inspection'
    const { minutes } = believed(kind)
    const spread = spreadOf(learnDurations([])(kind, kind === 'rebed' ? 10 : null))
    const id = `job ${jobs.length}`
    places.push({ id, at: near(towns[Math.floor(chance() * towns.length)] ?? YARD, 2) })
    const load = kind === 'rebed' ? { ft3: 1.5, lb: 90 } : { ft3: 0, lb: 0 }
    const size = { minutes, spread, people: kind === 'rebed' ? 2 : 1, skills: [], windows: [] }
    jobs.push({ id, label: id, place: id, ...size, out: load, back: load })
    kinds.set(id, kind)
    sum += minutes + MINUTES_OF_DRIVE
  }
  const sheets = DATES.flatMap((date) =>
    Array.from({ length: crews }, (_, n): Sheet => {
      const who = { id: `${date} ${n}`, label: `crew ${n}`, date, people: n % 4 === 3 ? 1 : 2, skills: [], visits: [] }
      const hours = { shift: { from: DAY_FROM, to: DAY_TO }, latestEnd: DAY_TO + 120, breaks: [] }
      return { ...who, ...hours, startPlace: 'yard', endPlace: 'yard', capacity: { ft3: 12, lb: 1_200 } }
    }),
  )
  const days = DATES.map((date) => ({ date, minutesInDay: 1440 }))
  const travel = travelTable(places, { calibration: UNCALIBRATED })
  const prices = boardPrices({ overtimeMinorPerHour: null, dayFill: 'usual' })
  return { board: { days, sheets, jobs, travel, prices, rush: UNCALIBRATED.rush, locale: 'en-US', unitSystem: 'us' }, kinds }
}
