/** What somebody on the day sheets may do and when they work. */
export const crewWork = {
  companyHours: 'company hours',
  noBreaks: 'none set',
  break: '{length} between {from} and {until}',
  allWork: 'all work',
  lightWork: 'light work, no valves',
  lifting: 'heavy lifting',
  license: 'plumbing license',
  goneValve: 'a valve no longer on the list',
  openEnd: 'from {day} until further notice',
} as const
