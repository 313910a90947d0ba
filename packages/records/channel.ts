/** Ways to reach somebody. */
export const channels = ['phone', 'text', 'email', 'letter'] as const
export type Channel = (typeof channels)[number]

export const channelWords: Readonly<Record<Channel, string>> = { phone: 'Phone', text: 'Text', email: 'Email', letter: 'Letter' }
