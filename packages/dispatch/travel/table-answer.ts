import type { LatLon } from './point.ts'

const METRES_PER_MILE = 1609.344

/** A drive as a server gave it; miles null where it gave no distance. */
export interface ServerLeg {
  readonly seconds: number
  readonly miles: number | null
}

/** By `legKey`. */
export type ServerLegs = ReadonlyMap<string, ServerLeg>

/** Name of a leg for a cache: coordinates to 4 decimals, about 36 ft, so that a pin moved by a hair asks nobody again. */
export function legKey(from: LatLon, to: LatLon): string {
  return `${rounded(from)};${rounded(to)}`
}

function rounded({ lat, lon }: LatLon): string {
  // `+ 0` turns −0 into 0: the two are one place.
  return `${(Math.round(lat * 1e4) / 1e4 + 0).toFixed(4)},${(Math.round(lon * 1e4) / 1e4 + 0).toFixed(4)}`
}

/** Path and query of a question to an open routing server's table service (OSRM HTTP API v1): all from `sources` to all `destinations`. */
export function tablePath(sources: readonly LatLon[], destinations: readonly LatLon[], profile = 'driving'): string {
  const coordinates = [...sources, ...destinations].map(({ lat, lon }) => `${lon.toFixed(5)},${lat.toFixed(5)}`).join(';')
  const indexes = (from: number, count: number): string => Array.from({ length: count }, (_, i) => from + i).join(';')
  const which = `sources=${indexes(0, sources.length)}&destinations=${indexes(sources.length, destinations.length)}`
  return `/table/v1/${profile}/${coordinates}?${which}&annotations=duration,distance`
}

/**
 * Reads a table service's answer (`code`, `durations` in seconds, optional `distances` in metres; rows are sources; null where there is no road). Legs without a
 * duration are left out, so they stay estimated. Answers a sentence when the answer is none.
 */
export function readTableAnswer(
  answer: unknown,
  sources: readonly LatLon[],
  destinations: readonly LatLon[],
): { legs: Map<string, ServerLeg>; missing: number } | { fault: string } {
  if (typeof answer !== 'object' || answer === null) return { fault: 'The routing server sent no drive times, so drives stay estimated.' }
  const { code, message, durations, distances } = answer as Record<string, unknown>
  if (code !== undefined && code !== 'Ok') {
    return { fault: `The routing server refused: ${String(message ?? code).slice(0, 120)}. Drives stay estimated.` }
  }
  const isTable = (table: unknown): table is unknown[][] =>
    Array.isArray(table) &&
    table.length === sources.length &&
    table.every((row) => Array.isArray(row) && row.length === destinations.length)
  if (!isTable(durations)) {
    return {
      fault: `The routing server sent drive times for a different number of places than ${sources.length} × ${destinations.length}; drives stay estimated.`,
    }
  }
  const metres = isTable(distances) ? distances : null
  const legs = new Map<string, ServerLeg>()
  let missing = 0
  sources.forEach((from, i) => {
    destinations.forEach((to, j) => {
      const seconds = durations[i]?.[j]
      if (!isAmount(seconds)) {
        missing++
        return
      }
      const length = metres?.[i]?.[j]
      legs.set(legKey(from, to), { seconds, miles: isAmount(length) ? length / METRES_PER_MILE : null })
    })
  })
  return { legs, missing }
}

function isAmount(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value) && value >= 0
}
