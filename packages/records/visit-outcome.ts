/** How a visit ended. */
export const visitOutcomes = ['done', 'made-safe', 'no-access', 'bed-not-at-fault', 'condemned'] as const
export type VisitOutcome = (typeof visitOutcomes)[number]

export const visitOutcomeWords: Readonly<Record<VisitOutcome, string>> = {
  done: 'Done',
  'made-safe': 'Made safe in bypass, to return',
  'no-access': 'No access',
  'bed-not-at-fault': 'The bed was not the fault',
  condemned: 'Condemned',
}
