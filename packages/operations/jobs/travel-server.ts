import { DRIVE_UNKNOWN, type Drive } from '@almanac/dispatch/travel/estimate-drive'
import type { Place } from '@almanac/dispatch/travel/great-circle'
import { driveKey, readTableAnswer } from '@almanac/dispatch/travel/read-table-answer'
import { config } from '@almanac/runtime/config'
import { log } from '@almanac/runtime/log'

const PATIENCE_MS = 2_000
/** After a failure the server is left alone for a while: a page must not wait for it each time. */
const REST_MS = 60_000
const MOST_KEPT = 50_000
const MOST_PLACES = 100

/** Roads do not depend on the firm: drives are kept by their two places, over all companies. The oldest go first. */
const kept = new Map<string, Drive>()
let restsUntil = 0

function keep(key: string, drive: Drive): void {
  kept.delete(key)
  kept.set(key, drive)
  if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value ?? '')
}

async function ask(url: string, places: readonly Place[]): Promise<(Drive | null)[][] | null> {
  const at = places.map(({ latitude, longitude }) => `${longitude.toFixed(6)},${latitude.toFixed(6)}`).join(';')
  try {
    const answer = await fetch(`${url.replace(/\/$/, '')}/${at}?annotations=duration,distance`, {
      signal: AbortSignal.timeout(PATIENCE_MS),
    })
    const table = answer.ok ? readTableAnswer(await answer.json(), places.length, places.length) : null
    if (table) return table
    log().warn({ status: answer.status }, 'the travel server gave no table; drives are estimated')
  } catch (error) {
    log().warn({ error: error instanceof Error ? error.name : 'unknown' }, 'the travel server did not answer; drives are estimated')
  }
  restsUntil = Date.now() + REST_MS
  return null
}

/**
 * Drives between places by the server of TRAVEL_TABLE_URL, where one is set: null for each that it does not know. What was asked once is kept. Makes a network
 * call: never inside a transaction.
 */
export async function serverDrives(legs: readonly { from: Place; to: Place }[]): Promise<(Drive | null)[]> {
  const url = config().TRAVEL_TABLE_URL
  if (!url) return legs.map(() => null)
  const missing = legs.filter(({ from, to }) => !kept.has(driveKey(from, to)))
  if (missing.length > 0 && Date.now() >= restsUntil) {
    const places = [...new Map(missing.flatMap(({ from, to }) => [from, to]).map((place) => [driveKey(place, place), place])).values()]
    const few = places.slice(0, MOST_PLACES)
    const table = await ask(url, few)
    table?.forEach((row, from) => {
      row.forEach((drive, to) => {
        const [a, b] = [few[from], few[to]]
        if (a && b) keep(driveKey(a, b), drive ?? DRIVE_UNKNOWN)
      })
    })
  }
  return legs.map(({ from, to }) => {
    const drive = kept.get(driveKey(from, to))
    return drive && drive.basis !== 'unknown' ? drive : null
  })
}

/** Forgets what was asked; for tests. */
export function forgetServerDrives(): void {
  kept.clear()
  restsUntil = 0
}
