/** How a job was asked for. */
export const askedFor = {
  link: 'By the link in a reminder. Days that suit: {days}',
  quote: 'Look and quote',
  complaint: 'Complaint after the rebed of {day}',
  hard: 'Hard since {when}',
  'sees/hard-water': 'Hard water',
  'sees/no-water': 'No water',
  'sees/leak': 'Leak',
  'sees/low-pressure': 'Low pressure',
  'sees/beads': 'Beads in the tap',
  'sees/salty': 'Salty taste',
  'sees/discolored': 'Brown water',
  'sees/runs-on': 'Runs all the time',
  'sees/no-salt-used': 'Uses no salt',
  'sees/question': 'A question',
} as const
