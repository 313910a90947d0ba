type Words = { subject: string; text: string }

/** To someone whom an owner invites. */
export const invitationMail = (of: { name: string; by: string; company: string; url: string }): Words => ({
  subject: `${of.by} invites you to ${of.company}`,
  text: `Hello ${of.name},

${of.by} has added you to ${of.company} in Rebed Almanac. Open this link to choose a password and sign in:

${of.url}

The link works once, for seven days. If you don't know ${of.company}, ignore this message.
`,
})

/** To someone who forgot their password. */
export const passwordMail = (of: { name: string; url: string }): Words => ({
  subject: 'Set a new password',
  text: `Hello ${of.name},

Open this link to set a new password for Rebed Almanac:

${of.url}

The link works once, for 24 hours. If you didn't ask for it, ignore this message: your password stays as it is.
`,
})

/** To someone who wants to set up a company. */
export const setUpMail = (of: { url: string }): Words => ({
  subject: 'Set up your company',
  text: `Hello,

Open this link to set up your company in Rebed Almanac:

${of.url}

The link works once, for three days. If you didn't ask for it, ignore this message.
`,
})

/** To the new address of someone who changes theirs. */
export const newEmailMail = (of: { name: string; url: string }): Words => ({
  subject: 'Confirm your new email',
  text: `Hello ${of.name},

Open this link to sign in to Rebed Almanac with this address from now on:

${of.url}

The link works once, for 24 hours. If you didn't ask for it, ignore this message.
`,
})

/** To the old address, once it is changed. */
export const emailChangedMail = (): Words => ({
  subject: 'Your email was changed',
  text: `Hello,

From now on another address signs in to your account in Rebed Almanac. If that wasn't you, tell an owner of your company at once.
`,
})
