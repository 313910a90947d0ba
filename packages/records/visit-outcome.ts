/** How a visit ended. */
export const visitOutcomes = ['done', 'made-safe', 'left-as-found', 'no-access', 'bed-not-at-fault', 'condemned'] as const
export type VisitOutcome = (typeof visitOutcomes)[number]

export const visitOutcomeWords: Readonly<Record<VisitOutcome, string>> = {
  done: 'Done',
  'made-safe': 'Made safe in bypass, return needed',
  'left-as-found': 'Left as found, return needed',
  'no-access': 'No access',
  'bed-not-at-fault': 'Bed not at fault',
  condemned: 'Condemned',
}
