/** What can have to be done at a site. */
export const jobKinds = [
  'rebed',
  'annual-visit',
  'cleaning',
  'inspection',
  'repair',
  'installation',
  'delivery',
  'warranty-return',
  'emergency',
] as const
export type JobKind = (typeof jobKinds)[number]

export interface JobKindFacts {
  kind: JobKind
  title: string
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
  rebed: { kind: 'rebed', title: 'Rebed', usualMinutes: 150, usualCrew: 2 },
  'annual-visit': { kind: 'annual-visit', title: 'Annual visit', usualMinutes: 45, usualCrew: 1 },
  cleaning: { kind: 'cleaning', title: 'Cleaning', usualMinutes: 60, usualCrew: 1 },
  inspection: { kind: 'inspection', title: 'Inspection', usualMinutes: 45, usualCrew: 1 },
  repair: { kind: 'repair', title: 'Repair', usualMinutes: 75, usualCrew: 1 },
  installation: { kind: 'installation', title: 'Installation', usualMinutes: 240, usualCrew: 2 },
  delivery: { kind: 'delivery', title: 'Delivery', usualMinutes: 20, usualCrew: 1 },
  'warranty-return': { kind: 'warranty-return', title: 'Warranty return', usualMinutes: 90, usualCrew: 1 },
  emergency: { kind: 'emergency', title: 'Emergency', usualMinutes: 90, usualCrew: 1 },
}

/** Minutes to plan for a rebed by tank diameter in inches. Common practice, no source: from 21 in up it is half a day or more. */
export function usualRebedMinutes(diameterIn: number | null): number {
  if (diameterIn === null) return jobKindFacts.rebed.usualMinutes
  if (diameterIn >= 24) return 480
  if (diameterIn >= 21) return 300
  if (diameterIn >= 14) return 180
  return 120
}
