import 'server-only'
import { config } from '@almanac/runtime/config'
import { LiveChanges } from '@almanac/runtime/live'

const held = globalThis as typeof globalThis & { almanacLive?: LiveChanges; almanacStreams?: Set<() => void> }

/** The open streams of this process, by what closes each. A server that is asked to end would wait for them for ever. */
export function openStreams(): Set<() => void> {
  if (!held.almanacStreams) {
    const streams = new Set<() => void>()
    held.almanacStreams = streams
    process.once('SIGTERM', () => {
      for (const close of streams) close()
    })
  }
  return held.almanacStreams
}

/** This process's one listening connection. */
export function liveChanges(): LiveChanges {
  held.almanacLive ??= new LiveChanges(config().DATABASE_URL)
  return held.almanacLive
}
