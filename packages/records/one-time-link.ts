/** What a link that works once lets its holder do: found a company, join one, set a password, change an address. */
export const linkPurposes = ['set-up', 'invitation', 'password', 'email'] as const
export type LinkPurpose = (typeof linkPurposes)[number]
