import type { Channel } from '@almanac/records/channel'

/** What a reminder's text can be filled in with, and what each is. `answer_link` stands in mails and texts alone: paper can't be pressed. */
export const reminderNames = {
  name: 'Who it’s for; empty if not known',
  site: 'What you call the place',
  company: 'Your company’s name',
  phone: 'Your telephone; empty if not set',
  why: 'The reason, the age and what you suggest, in whole sentences',
  reason: 'What wears the resin, as chloramine since 2021',
  age: 'How long the resin has lasted, and likely lasts',
  advice: 'By when you suggest new resin',
  month: 'The month before which it’s due; empty once that’s past',
  resin_volume: 'How much resin is in the tank; empty if not recorded',
  tank_size: 'The tank’s size; empty if not recorded',
  notice: '1 for the first notice, 2 and 3 for those that follow',
  answer_link: 'Where customers answer and stop reminders',
} as const
export type ReminderName = keyof typeof reminderNames

const all = Object.keys(reminderNames) as ReminderName[]

export const hasLink = (channel: Channel) => channel === 'email' || channel === 'text'

/** The names that a text of that channel may hold. */
export const namesFor = (channel: Channel): ReminderName[] => (hasLink(channel) ? all : all.filter((name) => name !== 'answer_link'))
