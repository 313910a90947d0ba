/** What an address says where there is nothing, to people of a company and to customers alike. */
export const nothingHere = {
  title: 'There’s nothing at this address',
  why: 'The link may be old or mistyped, or what it showed was removed. Nothing was changed.',
  sentLink: 'If a company sent you this link, call them and ask for a new one.',
  home: 'Go to the first page',
} as const
