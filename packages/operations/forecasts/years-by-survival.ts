/** Equally likely lives taken: enough for a tenth and nine tenths without running to the ends. */
const LIVES = 40
const MOST_YEARS = 200

/** Lives at even steps of chance from a survival curve, shortest first; a bed that outlasts 200 years is taken to last 200. */
export function yearsBySurvival(survival: (years: number) => number, count = LIVES): number[] {
  return Array.from({ length: count }, (_, i) => yearsAt(survival, 1 - (i + 0.5) / count))
}

function yearsAt(survival: (years: number) => number, alive: number): number {
  let low = 0
  let high = MOST_YEARS
  for (let step = 0; step < 30; step += 1) {
    const middle = (low + high) / 2
    if (survival(middle) > alive) low = middle
    else high = middle
  }
  return (low + high) / 2
}
