/** How a visit ended: a key for each value of `visitOutcomes`, and `value/meaning` for what it says. */
export const outcome = {
  done: 'Done',
  'made-safe': 'Made safe in bypass, return needed',
  'no-access': 'No access',
  'bed-not-at-fault': 'Bed not at fault',
  condemned: 'Condemned',
} as const
