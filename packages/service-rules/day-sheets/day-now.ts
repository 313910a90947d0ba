/** One visit of a crew's day as it is planned and as far as it has come. Times in milliseconds since 1970 UTC. */
export type VisitNow = {
  id: string
  state: 'offered' | 'booked' | 'under-way' | 'closed'
  startMs: number
  endMs: number
  /** When the crew began; null where nobody said. */
  startedMs: number | null
  /** When it was closed out; null before. */
  closedMs: number | null
  /** Until when it is said to last; null: as planned. */
  untilMs: number | null
  /** The last moment at which the crew was promised to come; null without a promise. */
  promisedUntilMs: number | null
  /** Minutes of the drive to it; null where that is not known. */
  driveMinutes: number | null
}

/**
 * What a visit can be expected to be. `over`: under way beyond its end; `lateMinutes`: to begin so much later than it stands; `missed`: later than was promised;
 * `silent`: it should be over, and nobody said that it began.
 */
export type Expected = { id: string; startMs: number; endMs: number; lateMinutes: number; over: boolean; missed: boolean; silent: boolean }

const MINUTE_MS = 60_000
/** Nobody is called for less. Common practice, no source. */
const MIND_MINUTES = 10

/**
 * When each visit of a crew's day can be expected, seen from now: a visit that runs over, or that nobody has begun, pushes those after it by what their gaps and
 * drives leave no room for. Nobody begins before the time that stands. A visit of which nothing was heard beyond its end counts as done as planned: not every
 * crew says when it begins. A day on which nothing has gone wrong answers what is planned.
 */
export function expectDay(dayStartMs: number, visits: readonly VisitNow[], nowMs: number): Expected[] {
  let freeMs = dayStartMs
  return visits.map((visit) => {
    const lengthMs = visit.endMs - visit.startMs
    const drivenMs = freeMs + (visit.driveMinutes ?? 0) * MINUTE_MS
    if (visit.state === 'closed') {
      const startMs = visit.startedMs ?? visit.startMs
      // Closed out at the kitchen table in the evening says nothing of when the crew was free.
      const endMs = Math.min(visit.closedMs ?? visit.endMs, Math.max(visit.endMs, startMs + lengthMs))
      freeMs = Math.min(endMs, nowMs)
      return { id: visit.id, startMs, endMs, lateMinutes: 0, over: false, missed: false, silent: false }
    }
    if (visit.state === 'booked' && nowMs > (visit.untilMs ?? visit.endMs)) {
      const { id, startMs, endMs } = visit
      freeMs = endMs
      return { id, startMs, endMs, lateMinutes: 0, over: false, missed: false, silent: true }
    }
    if (visit.state === 'under-way') {
      const startMs = visit.startedMs ?? visit.startMs
      const plannedMs = visit.untilMs ?? startMs + lengthMs
      const endMs = Math.max(plannedMs, nowMs)
      freeMs = endMs
      return { id: visit.id, startMs, endMs, lateMinutes: 0, over: nowMs > plannedMs, missed: false, silent: false }
    }
    const startMs = Math.max(visit.startMs, drivenMs, visit.startMs < nowMs ? nowMs : 0)
    const endMs = Math.max(startMs + lengthMs, visit.untilMs ?? 0)
    freeMs = endMs
    const lateMinutes = Math.round((startMs - visit.startMs) / MINUTE_MS)
    const missed = visit.promisedUntilMs !== null && startMs > visit.promisedUntilMs
    return {
      id: visit.id,
      startMs,
      endMs,
      lateMinutes: lateMinutes >= MIND_MINUTES || missed ? lateMinutes : 0,
      over: false,
      missed,
      silent: false,
    }
  })
}
