export type Spread = { p50: number; p95: number; n: number }

/** The value that a share of the sorted list does not exceed (nearest rank). */
export function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN
}

type Bounds = { clients: number; times: number; seconds: number }

/** Milliseconds of each call of `work`, so many at a time, for `times` calls or `seconds`, whichever comes first. */
async function sample(work: () => Promise<unknown>, { clients, times, seconds }: Bounds): Promise<number[]> {
  const taken: number[] = []
  const end = performance.now() + seconds * 1000
  let left = times
  const client = async () => {
    while (left-- > 0 && performance.now() < end) {
      const begun = performance.now()
      await work()
      taken.push(performance.now() - begun)
    }
  }
  await Promise.all(Array.from({ length: clients }, client))
  return taken
}

const TURNS = 4

/**
 * Times two ways of doing the same in turns, so that whatever else the machine is doing falls on both alike. Each is warmed first; the bounds hold for
 * each of the two over all turns.
 */
export async function timeBoth(one: () => Promise<unknown>, other: () => Promise<unknown>, bounds: Bounds): Promise<[Spread, Spread]> {
  const ways = [one, other].map((work) => ({ work, taken: [] as number[] }))
  for (const { work } of ways) for (let i = 0; i < Math.max(bounds.clients, 8); i++) await work()
  const share = { ...bounds, times: Math.ceil(bounds.times / TURNS), seconds: bounds.seconds / TURNS }
  for (let turn = 0; turn < TURNS; turn++) for (const way of ways) way.taken.push(...(await sample(way.work, share)))
  const [first, second] = ways.map(({ taken }) => {
    taken.sort((a, b) => a - b)
    return { p50: quantile(taken, 0.5), p95: quantile(taken, 0.95), n: taken.length }
  })
  return [first as Spread, second as Spread]
}

export const round = (value: number, digits = 2) => Number(value.toFixed(digits))
