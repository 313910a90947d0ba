import type { LatLon } from '@almanac/dispatch/travel/point'
import { legKey, readTableAnswer, type ServerLeg, type ServerLegs, tablePath } from '@almanac/dispatch/travel/table-answer'
import { config } from '@almanac/runtime/config'
import { log } from '@almanac/runtime/log'

const PATIENCE_MS = 2_000
/** After a failure the server is left alone for a while: a page must not wait for it each time. */
const REST_MS = 60_000
const MOST_KEPT = 50_000
const MOST_PLACES = 100

/** Roads do not depend on the firm: drives are kept by their two places, over all companies. The oldest go first. Null: no road is known. */
const kept = new Map<string, ServerLeg | null>()
let restsUntil = 0

function keep(key: string, leg: ServerLeg | null): void {
  kept.delete(key)
  kept.set(key, leg)
  if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value ?? '')
}

async function ask(base: string, points: readonly LatLon[]): Promise<ServerLegs | null> {
  try {
    const url = `${base.replace(/\/$/, '')}${tablePath(points, points)}`
    const answer = await fetch(url, { signal: AbortSignal.timeout(PATIENCE_MS) })
    const read = readTableAnswer(await answer.json(), points, points)
    if ('legs' in read) return read.legs
    log().warn({ status: answer.status, fault: read.fault }, 'the routing server sent no drive times')
  } catch (error) {
    log().warn({ error: error instanceof Error ? error.name : 'unknown' }, 'the routing server didn’t answer; drives are estimated')
  }
  restsUntil = Date.now() + REST_MS
  return null
}

/**
 * What the server of TRAVEL_TABLE_URL says of some drives, where one is set and it knows them; what was asked once is kept. Makes a network call: never
 * inside a transaction.
 */
export async function serverLegs(legs: readonly { from: LatLon; to: LatLon }[]): Promise<ServerLegs> {
  const base = config().TRAVEL_TABLE_URL
  if (!base) return new Map()
  const missing = legs.filter(({ from, to }) => !kept.has(legKey(from, to)))
  if (missing.length > 0 && Date.now() >= restsUntil) {
    const points = [...new Map(missing.flatMap(({ from, to }) => [from, to]).map((point) => [legKey(point, point), point])).values()]
    const asked = points.slice(0, MOST_PLACES)
    const found = await ask(base, asked)
    if (found)
      for (const from of asked)
        for (const to of asked) {
          const key = legKey(from, to)
          keep(key, found.get(key) ?? null)
        }
  }
  const known = legs.flatMap(({ from, to }) => {
    const key = legKey(from, to)
    const leg = kept.get(key)
    return leg ? [[key, leg] as const] : []
  })
  return new Map(known)
}

/** Forgets what was asked; for tests. */
export function forgetServerLegs(): void {
  kept.clear()
  restsUntil = 0
}
