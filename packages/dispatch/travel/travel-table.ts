import { type Calibration, estimateLeg } from './estimate-leg.ts'
import { isPoint, type LatLon } from './point.ts'
import { legKey, type ServerLegs } from './table-answer.ts'

/** A place with or without coordinates. */
export interface TravelPlace {
  readonly id: string
  readonly at: LatLon | null
}

/** All drives between some places, row-major from the row's place to the column's; −1 where unknown. */
export interface TravelTable {
  readonly ids: readonly string[]
  readonly seconds: Float64Array
  readonly miles: Float64Array
  /** One letter a drive: e estimated, s from a server, u unknown. */
  readonly origins: string
}

const UNKNOWN_DRIVE = -1

/** Drives between places: a server's where it gave them, else estimated, unknown without coordinates. Within one place it is 0. */
export function travelTable(places: readonly TravelPlace[], how: { calibration: Calibration; server?: ServerLegs }): TravelTable {
  const n = places.length
  const seconds = new Float64Array(n * n)
  const miles = new Float64Array(n * n)
  const origins: string[] = []
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const from = (places[i] as TravelPlace).at
      const to = (places[j] as TravelPlace).at
      const estimate = i === j ? { origin: 'estimated' as const, seconds: 0, miles: 0 } : estimateLeg(from, to, how.calibration)
      const server = how.server !== undefined && i !== j && isPoint(from) && isPoint(to) ? how.server.get(legKey(from, to)) : undefined
      seconds[i * n + j] = server?.seconds ?? estimate.seconds ?? UNKNOWN_DRIVE
      miles[i * n + j] = server?.miles ?? estimate.miles ?? UNKNOWN_DRIVE
      origins.push(server === undefined ? (estimate.origin === 'unknown' ? 'u' : 'e') : 's')
    }
  }
  return { ids: places.map(({ id }) => id), seconds, miles, origins: origins.join('') }
}
