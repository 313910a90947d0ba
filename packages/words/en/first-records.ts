/** Where nothing is on record yet: what to begin with. */
export const firstRecords = {
  importList: 'Import your customer list',
  addSite: 'Add a site',
  start: 'Start with your customers and their softeners. The forecast follows within seconds.',
  officeAdds: 'The office adds customers and their softeners.',
} as const
