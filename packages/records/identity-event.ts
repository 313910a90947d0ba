/** What can happen to someone's way in; kept with who and when, and nothing personal. */
export const identityEventKinds = [
  'signed-in',
  'sign-in-failed',
  'signed-out',
  'session-ended',
  'company-changed',
  'password-changed',
  'name-changed',
] as const
export type IdentityEventKind = (typeof identityEventKinds)[number]
