/** A turn to be put into a month: its key, the month it is due in, the months it may be done in, and how many hours of one person it takes. */
export type TurnToPlace = { key: string; month: string; months: readonly string[]; hours: number }

export type Placed = {
  month: string
  /** The crews have the hours for it then. */
  fits: boolean
}

/**
 * Puts turns into the months where crews are free. Those that have no choice come first, then those due first; each goes into its own month while that has the
 * hours, else into the one of its months with the most left, the earliest of equals. Where none has them it stays in its own: the customer was promised it.
 */
export function spreadTurns(turns: readonly TurnToPlace[], freeHours: ReadonlyMap<string, number>): Map<string, Placed> {
  const left = new Map(freeHours)
  const leftIn = (month: string) => left.get(month) ?? 0
  const order = [...turns].sort(
    (a, b) => a.months.length - b.months.length || (a.month < b.month ? -1 : a.month > b.month ? 1 : a.key < b.key ? -1 : 1),
  )
  const placed = new Map<string, Placed>()
  for (const { key, month: own, months, hours } of order) {
    const home = months.includes(own) ? own : (months[0] ?? own)
    const roomiest = months.reduce((best, month) => (leftIn(month) > leftIn(best) ? month : best), home)
    const month = leftIn(home) >= hours || leftIn(roomiest) < hours ? home : roomiest
    placed.set(key, { month, fits: leftIn(month) >= hours })
    left.set(month, leftIn(month) - hours)
  }
  return placed
}
