/** Titles, in the browser's tab, of the pages that no menu leads to; those of the menu are titled as it calls them. */
export const pageTitle = {
  job: 'Job',
  newJob: 'Add a job',
  packingList: 'Packing list',
  plan: 'Plan',
  site: 'Site',
  bed: 'Bed',
  choice: 'Rebed options, who',
  importFile: 'Import a file',
  supply: 'Water supply',
  newTest: 'Record a water test',
  card: 'Settings card',
  visit: 'Visit',
} as const
