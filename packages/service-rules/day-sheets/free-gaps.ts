/** A stretch of time, as milliseconds since 1970 UTC, its end not included. */
export interface Stretch {
  startMs: number
  endMs: number
}

/** What is left of `hours` when what is taken is taken out, in order. Stretches outside the hours do not matter; overlaps are joined. */
export function freeGaps(hours: Stretch, taken: readonly Stretch[]): Stretch[] {
  const gaps: Stretch[] = []
  let freeFrom = hours.startMs
  for (const one of [...taken].sort((a, b) => a.startMs - b.startMs)) {
    const until = Math.min(one.startMs, hours.endMs)
    if (until > freeFrom) gaps.push({ startMs: freeFrom, endMs: until })
    freeFrom = Math.max(freeFrom, one.endMs)
  }
  if (hours.endMs > freeFrom) gaps.push({ startMs: freeFrom, endMs: hours.endMs })
  return gaps
}
