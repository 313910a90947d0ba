/** What each outcome of a visit means, for whoever chooses it: a key for each value of `visitOutcomes`. */
export const outcomeMeaning = {
  done: 'The work is finished and the softener is back in service.',
  'made-safe': 'The house has water through the bypass. The work isn’t finished and needs another visit.',
  'left-as-found': 'You stopped before anything was opened. The softener runs as you found it; somebody comes back.',
  'no-access': 'You couldn’t get to the softener. Nothing was touched; another visit is needed.',
  'bed-not-at-fault': 'The trouble was elsewhere. The bed stays in service and counts as working today.',
  condemned: 'The tank must not be used again. Its bed ends without a new one and the softener stays in bypass.',
} as const
