export type Spread = { p50: number; p95: number; n: number }

/** The value that a share of the sorted list does not exceed (nearest rank). */
export function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN
}

/** Milliseconds of `work` at so many at a time, for `times` calls or `seconds`, whichever comes first; the first calls are not counted. */
export async function time(work: () => Promise<unknown>, at: { clients: number; times: number; seconds: number }): Promise<Spread> {
  for (let i = 0; i < Math.max(at.clients, 8); i++) await work()
  const taken: number[] = []
  const end = performance.now() + at.seconds * 1000
  let left = at.times
  const client = async () => {
    while (left-- > 0 && performance.now() < end) {
      const begun = performance.now()
      await work()
      taken.push(performance.now() - begun)
    }
  }
  await Promise.all(Array.from({ length: at.clients }, client))
  taken.sort((a, b) => a - b)
  return { p50: quantile(taken, 0.5), p95: quantile(taken, 0.95), n: taken.length }
}

export const round = (value: number, digits = 2) => Number(value.toFixed(digits))
