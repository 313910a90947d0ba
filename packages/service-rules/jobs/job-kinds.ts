import type { JobKind } from '@almanac/records/job-kind'

export interface JobKindFacts {
  /** On-site minutes to plan with when nothing better is known. */
  usualMinutes: number
  /** People needed when neither weight nor access says otherwise. */
  usualCrew: number
}

/**
 * Usual length and crew of each kind. Common practice, no source: a domestic rebed takes a crew of two 1.5 to 3 hours, half to a
 * full day from 21 in tanks up; the other figures are planning habits that a firm will want to change.
 */
export const jobKindFacts: Record<JobKind, JobKindFacts> = {
  rebed: { usualMinutes: 150, usualCrew: 2 },
  'annual-visit': { usualMinutes: 45, usualCrew: 1 },
  cleaning: { usualMinutes: 60, usualCrew: 1 },
  inspection: { usualMinutes: 45, usualCrew: 1 },
  repair: { usualMinutes: 75, usualCrew: 1 },
  installation: { usualMinutes: 240, usualCrew: 2 },
  exchange: { usualMinutes: 120, usualCrew: 2 },
  delivery: { usualMinutes: 20, usualCrew: 1 },
  'warranty-return': { usualMinutes: 90, usualCrew: 1 },
  emergency: { usualMinutes: 90, usualCrew: 1 },
}

/** Minutes to plan for a rebed by tank diameter in inches. Common practice, no source: from 21 in up it is half a day or more. */
export function usualRebedMinutes(diameterIn: number | null): number {
  if (diameterIn === null) return jobKindFacts.rebed.usualMinutes
  if (diameterIn >= 24) return 480
  if (diameterIn >= 21) return 300
  if (diameterIn >= 14) return 180
  return 120
}
