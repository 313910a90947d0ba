import { tryLeaveOut, tryPlace } from './left-out.ts'
import type { Neighbours } from './neighbours.ts'
import { type Random, shuffle } from './random.ts'
import type { Routes } from './route-types.ts'
import { scanUniform } from './scan-uniform.ts'
import { scanWalked } from './scan-walked.ts'

/** What the descent keeps between runs, so that nothing is allocated in one. */
export interface Descent {
  readonly neighbours: Neighbours
  readonly order: Int32Array
  readonly tested: Int32Array
}

export function newDescent(neighbours: Neighbours, visits: number): Descent {
  return { neighbours, order: Int32Array.from({ length: visits }, (_, v) => v), tested: new Int32Array(visits) }
}

/** Places what is left out and makes gaining moves until there is none. Pairs of routes unchanged since `settled` on the routes' clock are taken as tried. */
export function descend(s: Routes, descent: Descent, random: Random, settled: number): void {
  const { neighbours, order, tested } = descent
  const scan = s.model.uniform ? scanUniform : scanWalked
  shuffle(order, random)
  tested.fill(settled)
  for (const u of order) if ((s.owner[u] as number) < 0) tryPlace(s, u, neighbours)
  // A visit that is left out and placed again without end cannot be: each step lowers the price by more than the tolerance.
  // Where huge penalties leave only rounding to compare, two moves could take turns: more moves than any descent needs end it.
  let left = 1000 + 200 * order.length
  for (let moved = true; moved && left > 0; ) {
    moved = false
    for (let i = 0; i < order.length; i++) {
      const u = order[i] as number
      const last = tested[u] as number
      tested[u] = s.clock.now
      if ((s.owner[u] as number) < 0) {
        if (s.clock.now > last && tryPlace(s, u, neighbours)) moved = --left > 0
        continue
      }
      if (tryLeaveOut(s, u)) {
        moved = --left > 0
        continue
      }
      while (scan(s, u, neighbours, last)) {
        moved = true
        if (--left <= 0) return
      }
    }
  }
}
