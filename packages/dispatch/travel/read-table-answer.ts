import type { Drive } from './estimate-drive.ts'

const MILES_PER_METRE = 1 / 1609.344

type Rows = readonly (readonly (number | null)[])[]

/**
 * The answer of a server that gives a table of durations over HTTP: `durations` in seconds and, where it has them, `distances` in metres, row by row, null where
 * there is no road. Answers null where the answer is not such a table of `sources` × `destinations`: then the caller falls back to coordinates.
 */
export function readTableAnswer(answer: unknown, sources: number, destinations: number): (Drive | null)[][] | null {
  if (typeof answer !== 'object' || answer === null) return null
  const { code, durations, distances } = answer as { code?: unknown; durations?: unknown; distances?: unknown }
  if (code !== undefined && code !== 'Ok') return null
  if (!isTable(durations, sources, destinations)) return null
  const metres = isTable(distances, sources, destinations) ? distances : null
  return durations.map((row, from) =>
    row.map((seconds, to): Drive | null => {
      if (seconds === null) return null
      // A server without distances: what the duration comes to at an open road's speed would be made up, so the distance stays 0.
      return { basis: 'server', minutes: seconds / 60, miles: (metres?.[from]?.[to] ?? 0) * MILES_PER_METRE }
    }),
  )
}

function isTable(value: unknown, rows: number, columns: number): value is Rows {
  return (
    Array.isArray(value) &&
    value.length === rows &&
    value.every((row) => Array.isArray(row) && row.length === columns && row.every(isDuration))
  )
}

const isDuration = (one: unknown) => one === null || (typeof one === 'number' && Number.isFinite(one) && one >= 0)

/** What a cached drive is kept under: to about 11 m, so that a door's two sides are one place. */
export function driveKey(from: { latitude: number; longitude: number }, to: { latitude: number; longitude: number }): string {
  const at = (place: { latitude: number; longitude: number }) => `${place.latitude.toFixed(4)},${place.longitude.toFixed(4)}`
  return `${at(from)};${at(to)}`
}
