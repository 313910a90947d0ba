import type { RoutingProblem } from '@almanac/dispatch/problem/problem'

interface Site {
  x: number
  y: number
  demand: number
  from: number
  to: number
  service: number
}

/**
 * A vehicle routing instance with time windows, in Solomon's text or VRPLIB's, as a problem: distance is the objective, one tick is a tenth. Distances and durations are
 * Euclidean, truncated to one decimal (the rule of the 12th DIMACS challenge), and so are whole numbers of tenths here. Throws with a sentence on a text that is neither.
 */
export function readVrptw(text: string): RoutingProblem {
  const { vehicles, capacity, sites } = text.includes('NODE_COORD_SECTION') ? readVrplib(text) : readSolomon(text)
  const places = sites.length
  const depot = sites[0]
  if (depot === undefined || !(vehicles > 0) || !(capacity >= 0))
    throw new Error('This text holds no vehicle routing instance that can be read.')
  const tenths = Int32Array.from({ length: places * places }, (_, i) => {
    const a = sites[Math.floor(i / places)] as Site
    const b = sites[i % places] as Site
    // Not Math.hypot: it misses some whole roots by a last digit, and the truncation then takes a tenth.
    return Math.floor(10 * Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2))
  })
  const nothing = { ft3: 0, lb: 0 }
  return {
    places,
    durations: tenths,
    distances: tenths,
    visits: sites.slice(1).map((site, i) => ({
      id: String(i + 1),
      place: i + 1,
      serviceTicks: 10 * site.service,
      windows: [{ from: 10 * site.from, to: 10 * site.to }],
      out: { ft3: site.demand, lb: 0 },
      back: nothing,
      skills: [],
      people: 1,
    })),
    crewDays: Array.from({ length: vehicles }, (_, r) => ({
      id: String(r + 1),
      day: 0,
      startPlace: 0,
      endPlace: 0,
      shift: { from: 10 * depot.from, to: 10 * depot.to },
      latestEnd: 10 * depot.to,
      pauses: [],
      capacity: { ft3: capacity, lb: 0 },
      skills: [],
      people: 1,
      distancePrice: 1,
      drivePrice: 0,
      overtimePrice: 0,
      sendPrice: 0,
    })),
  }
}

const numbersOf = (line: string): number[] => line.trim().split(/\s+/).map(Number)

function readSolomon(text: string): { vehicles: number; capacity: number; sites: Site[] } {
  const rows = text
    .split('\n')
    .map(numbersOf)
    .filter((row) => row.length > 1 && row.every(Number.isFinite))
  const [vehicles, capacity] = rows.find((row) => row.length === 2) ?? []
  const sites = rows
    .filter((row) => row.length === 7)
    .map(([, x, y, demand, from, to, service]) => ({ x, y, demand, from, to, service }) as Site)
  return { vehicles: vehicles ?? 0, capacity: capacity ?? -1, sites }
}

function readVrplib(text: string): { vehicles: number; capacity: number; sites: Site[] } {
  const head = (name: string): number => Number(text.match(new RegExp(`^${name}\\s*:\\s*(\\S+)`, 'm'))?.[1])
  const section = (name: string): number[][] => {
    const [, after = ''] = text.split(`${name}_SECTION`)
    return after
      .split(/[A-Z]/, 1)[0]
      ?.split('\n')
      .map(numbersOf)
      .filter((row) => row.length > 1 && row.every(Number.isFinite)) as number[][]
  }
  const demands = new Map(section('DEMAND').map(([node, demand]) => [node, demand]))
  const windows = new Map(section('TIME_WINDOW').map(([node, from, to]) => [node, { from, to }]))
  const sites = section('NODE_COORD').map(([node, x, y], i) => {
    return { x, y, demand: demands.get(node), ...windows.get(node), service: i === 0 ? 0 : head('SERVICE_TIME') } as Site
  })
  return { vehicles: head('VEHICLES'), capacity: head('CAPACITY'), sites }
}
