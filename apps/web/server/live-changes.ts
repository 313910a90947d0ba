import 'server-only'
import { config } from '@almanac/runtime/config'
import { LiveChanges } from '@almanac/runtime/live'

const held = globalThis as typeof globalThis & { almanacLive?: LiveChanges }

/** This process's one listening connection. */
export function liveChanges(): LiveChanges {
  held.almanacLive ??= new LiveChanges(config().DATABASE_URL)
  return held.almanacLive
}
