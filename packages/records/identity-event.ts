/** What can happen to someone's way in; kept with who and when, and nothing personal. */
export const identityEventKinds = [
  'signed-in',
  'sign-in-failed',
  'signed-out',
  'session-ended',
  'company-changed',
  'password-changed',
  'name-changed',
  'company-founded',
  'invited',
  'invitation-withdrawn',
  'joined',
  'role-changed',
  'access-ended',
  'password-link-made',
  'password-set',
  'email-changed',
  'second-factor-on',
  'second-factor-off',
  'passkey-added',
  'passkey-removed',
] as const
export type IdentityEventKind = (typeof identityEventKinds)[number]
