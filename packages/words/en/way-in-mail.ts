/** Mails of the ways in: an invitation, a forgotten password, a company to set up, a changed email. */
export const wayInMail = {
  hello: 'Hello {name},',
  helloYou: 'Hello,',
  invitation: '{by} invites you to {company}',
  'invitation/why': '{by} has added you to {company} in Rebed Almanac. Open this link to choose a password and sign in:',
  'invitation/else': 'The link works once, for seven days. If you don’t know {company}, ignore this message.',
  password: 'Set a new password',
  'password/why': 'Open this link to set a new password for Rebed Almanac:',
  'password/else': 'The link works once, for 24 hours. If you didn’t ask for it, ignore this message: your password stays as it is.',
  setUp: 'Set up your company',
  'setUp/why': 'Open this link to set up your company in Rebed Almanac:',
  'setUp/else': 'The link works once, for three days. If you didn’t ask for it, ignore this message.',
  newEmail: 'Confirm your new email',
  'newEmail/why': 'Open this link to sign in to Rebed Almanac with this address from now on:',
  'newEmail/else': 'The link works once, for 24 hours. If you didn’t ask for it, ignore this message.',
  emailChanged: 'Your email was changed',
  'emailChanged/why':
    'From now on another address signs in to your account in Rebed Almanac. If that wasn’t you, tell an owner of your company at once.',
} as const
