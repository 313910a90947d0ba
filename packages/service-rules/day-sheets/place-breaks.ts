import { freeGaps, type Stretch } from './free-gaps.ts'

/** A break that begins between two instants, ms since 1970 UTC, and lasts so long. */
export type Break = { fromMs: number; untilMs: number; lengthMs: number }

/** Where a break lies; `fits` is false where nothing that is taken leaves room for it, and it stands at its first moment. */
export type PlacedBreak = Stretch & { fits: boolean }

/** Puts each break of a day at the first moment it may begin that nothing else takes, in order. */
export function placeBreaks(hours: Stretch, taken: readonly Stretch[], breaks: readonly Break[]): PlacedBreak[] {
  const placed: PlacedBreak[] = []
  for (const { fromMs, untilMs, lengthMs } of [...breaks].sort((a, b) => a.fromMs - b.fromMs)) {
    const starts = freeGaps(hours, [...taken, ...placed]).flatMap((gap) => {
      const startMs = Math.max(gap.startMs, fromMs)
      return startMs <= untilMs && startMs + lengthMs <= gap.endMs ? [startMs] : []
    })
    const startMs = starts[0] ?? fromMs
    placed.push({ startMs, endMs: startMs + lengthMs, fits: starts.length > 0 })
  }
  return placed
}
