/** What can have to be done at a site: a key for each value of `jobKinds`. */
export const jobKind = {
  rebed: 'Rebed',
  'annual-visit': 'Annual visit',
  cleaning: 'Cleaning',
  inspection: 'Inspection',
  repair: 'Repair',
  installation: 'Installation',
  delivery: 'Delivery',
  'warranty-return': 'Warranty visit',
  emergency: 'Emergency',
} as const
