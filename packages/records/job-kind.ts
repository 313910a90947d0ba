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

export const jobKindWords: Readonly<Record<JobKind, string>> = {
  rebed: 'Rebed',
  'annual-visit': 'Annual visit',
  cleaning: 'Cleaning',
  inspection: 'Inspection',
  repair: 'Repair',
  installation: 'Installation',
  delivery: 'Delivery',
  'warranty-return': 'Warranty visit',
  emergency: 'Emergency',
}
