import type { JobKind } from './job-kind.ts'

/** Kinds that a crew may ask for at the end of a visit; what presses is telephoned. */
export const followUpKinds = [
  'rebed',
  'annual-visit',
  'cleaning',
  'inspection',
  'repair',
  'installation',
  'exchange',
  'delivery',
] as const satisfies readonly JobKind[]
export type FollowUpKind = (typeof followUpKinds)[number]

/** What else is to be told of a visit: who was there beside the crew that was booked, another visit that is needed, and work that was agreed with the customer on the spot. */
export type BesideVisit = {
  others: string
  followUp: { kind: FollowUpKind; what: string } | null
  extra: { what: string; agreedWith: string } | null
}
