import type { CrewDay, RoutedVisit, RoutingProblem, Span } from '@almanac/dispatch/problem/problem'
import { type Random, seededRandom } from '@almanac/dispatch/search/random'

const HOUR = 3600
const DAY = 24 * HOUR

export interface WeekSize {
  readonly visits: number
  readonly crews: number
  readonly days: number
  /** Share of visits that may be left out at a price; the rest must be planned. */
  readonly optional: number
}

/** An invented firm's days from a seed: rebeds for two, small jobs for one, windows on several days, pauses, rush hours, loads out and back, promises to keep. */
export function randomCrewDays(seed: number, size: WeekSize): RoutingProblem {
  const random = seededRandom(seed)
  const sites = Array.from({ length: size.visits + 1 }, () => ({ x: random.below(40_000), y: random.below(40_000) }))
  const places = sites.length
  const metres = (i: number): number => {
    const a = sites[Math.floor(i / places)] as { x: number; y: number }
    const b = sites[i % places] as { x: number; y: number }
    return Math.round(1.3 * Math.hypot(a.x - b.x, a.y - b.y))
  }
  const distances = Array.from({ length: places * places }, (_, i) => metres(i))
  const durations = distances.map((distance) => Math.round(distance / 13))
  const crewDays = Array.from({ length: size.crews * size.days }, (_, i) =>
    randomCrewDay(random, i % size.crews, Math.floor(i / size.crews)),
  )
  const visits = Array.from({ length: size.visits }, (_, v) => randomVisit(random, v, size, crewDays))
  return { visits, crewDays, places, durations, distances }
}

function randomCrewDay(random: Random, crew: number, day: number): CrewDay {
  const people = crew % 3 === 2 ? 1 : 2
  const from = day * DAY + 8 * HOUR
  return {
    id: `Crew ${crew + 1}, day ${day + 1}`,
    day,
    startPlace: 0,
    endPlace: 0,
    shift: { from, to: from + 8 * HOUR },
    latestEnd: from + 10 * HOUR,
    pauses: random.below(2) === 0 ? [{ start: { from: from + 3 * HOUR, to: from + 5 * HOUR }, ticks: 1800 }] : [],
    ...(random.below(3) === 0
      ? {
          rush: [
            { from, to: from + 5400, factor: 1.4 },
            { from: from + 7 * HOUR, to: from + 9 * HOUR, factor: 1.2 },
          ],
        }
      : {}),
    capacity: { ft3: 10 + random.below(10), lb: 600 + random.below(600) },
    skills: crew % 2 === 0 ? ['well water'] : [],
    people,
    distancePrice: 0.05,
    drivePrice: 0.8 * people,
    overtimePrice: 1.5 * people,
    sendPrice: random.below(2) * 3000,
    ...(random.below(2) === 0 ? { fairShareTicks: 6 * HOUR, unfairPrice: 0.3 } : {}),
    // By crew and day, not by chance: the other figures stay what they were.
    ...((crew + day) % 2 === 1 ? { reserve: { by: from + 8 * HOUR, deviations: 1.28, driveSpread: 0.15, price: 4 } } : {}),
  }
}

function randomVisit(random: Random, v: number, size: WeekSize, crewDays: readonly CrewDay[]): RoutedVisit {
  const rebed = random.below(3) === 0
  const windows: Span[] = []
  for (let day = 0; day < size.days; day++) {
    if (size.days > 1 && random.below(3) === 0) continue
    const early = day * DAY + 8 * HOUR
    if (random.below(2) === 0) windows.push({ from: early, to: early + 9 * HOUR })
    else windows.push({ from: early, to: early + 2 * HOUR }, { from: early + 5 * HOUR, to: early + 8 * HOUR })
  }
  if (windows.length === 0) windows.push({ from: 8 * HOUR, to: 16 * HOUR })
  const optional = random.below(100) < 100 * size.optional
  // Two promises at most a crew-day, so that they can be kept.
  const promising = Math.floor(v / 2)
  const able = v % 12 < 2 && crewDays[promising]?.people === 2 ? crewDays[promising] : undefined
  const collects = random.below(4) === 0 ? 4 : 0
  const ft3 = rebed ? 2 + random.below(8) : random.below(2)
  const serviceTicks = 900 * (1 + random.below(rebed ? 10 : 5))
  return {
    id: `job ${v + 1}`,
    place: v + 1,
    serviceTicks,
    ...(v % 3 === 0 ? {} : { lasts: { mean: 1.03 * serviceTicks, variance: (0.25 * serviceTicks) ** 2 } }),
    windows,
    out: { ft3, lb: 52 * ft3 },
    // Spent resin comes back wet, and a small job may bring an old tank home.
    back: rebed ? { ft3, lb: 62 * ft3 } : { ft3: collects, lb: 40 * collects },
    skills: random.below(6) === 0 ? ['well water'] : [],
    people: rebed ? 2 : 1,
    ...(random.below(3) === 0 ? { dueDay: random.below(size.days), latePricePerDay: 500 } : {}),
    ...(random.below(8) === 0 && size.days > 1 ? { releaseDay: 1, windows: windows.map((w) => ({ from: w.from, to: w.to + DAY })) } : {}),
    ...(random.below(6) === 0 ? { dislikes: [{ crewDay: random.below(crewDays.length), price: 800 }] } : {}),
    ...(v % 4 === 1 ? { stands: { crewDay: v % crewDays.length, start: windows[0]?.from ?? 0, price: 300 } } : {}),
    ...(optional ? { leaveOutPrice: 20_000 + random.below(20_000) } : {}),
    ...(able
      ? {
          promised: { crewDay: promising, start: { from: able.shift.from + (v % 2) * 3 * HOUR, to: able.shift.to } },
          skills: [],
          releaseDay: 0,
        }
      : {}),
  }
}
