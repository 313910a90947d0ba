import type { Sequences } from '../problem/plan.ts'
import type { Individual } from './individual.ts'
import type { Routes } from './route-types.ts'
import { clearRoutes, refreshRoute } from './routes.ts'
import { relink } from './splice.ts'

export function sequencesOf(plan: Individual): number[][] {
  return Array.from(plan.ends, (end, r) => [...plan.order.subarray(r === 0 ? 0 : plan.ends[r - 1], end)])
}

/** Puts given orders onto the routes; a visit named twice keeps its first place. */
export function setSequences(s: Routes, sequences: Sequences): void {
  const { visits, days } = s.model
  clearRoutes(s)
  sequences.forEach((sequence, r) => {
    if (r >= days) return
    const fresh = Int32Array.from(new Set(sequence.filter((v) => v >= 0 && v < visits && (s.owner[v] as number) < 0)))
    relink(s, visits + r, fresh, fresh.length, visits + days + r)
    refreshRoute(s, r)
  })
}
