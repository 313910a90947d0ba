import 'server-only'
import { sendNotice } from '@almanac/database/send-notice'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { LiveChanges } from '@almanac/runtime/live'

type Held = { almanacLive?: LiveChanges; almanacStreams?: Set<() => void>; almanacStreamCounts?: Map<string, number> }
const held = globalThis as typeof globalThis & Held

/** Streams that one person may hold open at this process: a tab each, on all their devices. */
const MOST_STREAMS = 30

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
  const { DATABASE_URL, LIVE_DATABASE_URL } = config()
  held.almanacLive ??= new LiveChanges(LIVE_DATABASE_URL ?? DATABASE_URL, { send: sendNotice, everyMs: 10_000, withinMs: 5_000 })
  return held.almanacLive
}

/** Counts one more open stream of a person; answers what gives it back, once. Refuses beyond the limit. */
export function takeStream(personId: string): () => void {
  held.almanacStreamCounts ??= new Map()
  const counts = held.almanacStreamCounts
  const count = counts.get(personId) ?? 0
  if (count >= MOST_STREAMS)
    throw new AppError(
      'rate-limited',
      `You have ${MOST_STREAMS} pages open, and we can’t keep more up to date. Close some. This page shows what was true when it loaded.`,
    )
  counts.set(personId, count + 1)
  let given = false
  return () => {
    if (given) return
    given = true
    const left = (counts.get(personId) ?? 1) - 1
    if (left > 0) counts.set(personId, left)
    else counts.delete(personId)
  }
}
