/** The search and what it answers. */
export const find = {
  label: 'Search',
  placeholder: 'Name, street, phone or tank',
  closeSearch: 'Close search',
  people: 'People',
  addresses: 'Addresses',
  tanks: 'Tanks',
  jobs: 'Jobs',
  pages: 'Pages',
  noCustomer: 'No customer',
  none: 'No results.',
  results: '{count, plural, one {1 result} other {# results}}.',
  near: 'No exact match. Close ones:',
  nearResults: 'No exact match. {count, plural, one {1 result} other {# results}} close to it.',
  nothing: 'Nothing found for “{text}”. Try fewer letters, the street, or the last digits of the phone.',
  stateOn: '{state} {day}',
} as const
