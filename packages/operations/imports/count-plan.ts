import type { ImportCounts } from '@almanac/contract/imports'
import type { ImportPlan } from './plan-types.ts'

/** How many rows go which way, and how many things are made. */
export function countPlan(plan: ImportPlan): ImportCounts {
  const counts: ImportCounts = {
    created: 0,
    updated: 0,
    unchanged: 0,
    problem: 0,
    noted: 0,
    leftEmpty: 0,
    decide: 0,
    unseen: 0,
    customers: 0,
    sites: 0,
    softeners: 0,
  }
  for (const row of plan.rows) {
    counts[row.status]++
    if (row.notes.length > 0) counts.noted++
    if (row.problems.some((one) => one.kind === 'left-empty') && row.status !== 'problem') counts.leftEmpty++
    if (row.problems.some((one) => one.kind === 'decide')) counts.decide++
  }
  counts.unseen = plan.creates.bed.filter(({ facts }) => !facts.lastSeenDay && !facts.ended).length
  counts.customers = plan.creates.customer.length
  counts.sites = plan.creates.site.length
  counts.softeners = plan.creates.softener.length
  return counts
}
