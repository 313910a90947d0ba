import { oneOf } from './choices.ts'

/** What can have to be done at a site. */
export const jobKinds = [
  'rebed',
  'annual-visit',
  'cleaning',
  'inspection',
  'repair',
  'installation',
  'exchange',
  'delivery',
  'warranty-return',
  'emergency',
] as const
export type JobKind = (typeof jobKinds)[number]

/** Kinds whose "done" takes a bed out and puts another in: a bed that waits for one of them needs no reminder and no second job. */
export const bedRenewingKinds = ['rebed', 'exchange'] as const satisfies readonly JobKind[]

/** Whether a kind is one of them. */
export const renewsBed = (kind: string): boolean => oneOf(bedRenewingKinds, kind) !== null

export const jobKindWords: Readonly<Record<JobKind, string>> = {
  rebed: 'Rebed',
  'annual-visit': 'Annual visit',
  cleaning: 'Cleaning',
  inspection: 'Inspection',
  repair: 'Repair',
  installation: 'Installation',
  exchange: 'Tank exchange',
  delivery: 'Delivery',
  'warranty-return': 'Warranty visit',
  emergency: 'Emergency',
}
