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
