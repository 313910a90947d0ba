/** The menu of whoever is signed in. */
export const account = {
  goTo: 'Go to {company}',
  asRole: 'as {role}',
  owner: 'owner',
  dispatcher: 'dispatcher',
  technician: 'technician',
  language: 'Language',
  companyLanguage: 'Your company’s',
  unreviewed: '{language} (not yet checked by a technician)',
  slashKey: 'Press / to search',
  yourAccount: 'Your account',
  signOut: 'Sign out',
} as const
