import type { Channel } from '@almanac/records/channel'
import type { ContactRole } from '@almanac/records/contact-role'

/** A way to reach somebody at a site. `letterAddress` is true where a postal address is known for them. */
export interface ReminderContact {
  contactId: string
  role: ContactRole
  name: string | null
  phone: string | null
  email: string | null
  letterAddress: boolean
  /** Only what was answered; silence is no consent. */
  consents: readonly { channel: Channel; granted: boolean }[]
}

export type ContactChoice = { ok: true; contactId: string; channel: Channel; sentence: string } | { ok: false; reason: string }

/** Who decides about the expense hears first; a key-holder is never reminded, because it is not theirs to decide. */
const rolesInOrder: readonly ContactRole[] = ['payer', 'landlord', 'occupier']

const channelWords: Record<Channel, string> = { email: 'email', phone: 'phone', text: 'text message', letter: 'letter' }
const addressWords: Record<Channel, string> = {
  email: 'email address',
  phone: 'phone number',
  text: 'phone number',
  letter: 'postal address',
}

/**
 * The contact and channel a reminder goes to: payer before landlord before occupier, and for that contact the firm's first
 * channel that the contact consents to and that has an address. A person further down is asked only when nobody above can be reached.
 */
export function chooseContact(contacts: readonly ReminderContact[], channels: readonly Channel[]): ContactChoice {
  if (channels.length === 0) return { ok: false, reason: 'No way to reach customers is set. Choose at least one.' }
  const asked = contacts.filter((contact) => contact.role !== 'key-holder')
  if (asked.length === 0) return { ok: false, reason: 'There’s no payer, landlord or occupant to write to. Add a contact.' }
  for (const role of rolesInOrder) {
    for (const contact of inOrder(asked.filter((one) => one.role === role))) {
      const channel = channels.find((one) => consentsTo(contact, one) && hasAddress(contact, one))
      if (channel) return { ok: true, contactId: contact.contactId, channel, sentence: `To ${who(contact)} by ${channelWords[channel]}.` }
    }
  }
  const unreachable = channels.find((channel) => asked.some((contact) => consentsTo(contact, channel)))
  if (unreachable) {
    return { ok: false, reason: `A contact agreed to ${channelWords[unreachable]}, but no ${addressWords[unreachable]} is recorded.` }
  }
  return { ok: false, reason: `Nobody agreed to ${channels.map((channel) => channelWords[channel]).join(' or ')}. Ask at the next call.` }
}

/** Input order must not decide who is written to: the same contacts always give the same choice. */
function inOrder(contacts: readonly ReminderContact[]): ReminderContact[] {
  return [...contacts].sort((a, b) => (a.contactId < b.contactId ? -1 : a.contactId > b.contactId ? 1 : 0))
}

function consentsTo(contact: ReminderContact, channel: Channel): boolean {
  const answers = contact.consents.filter((consent) => consent.channel === channel)
  return answers.length > 0 && answers.every((consent) => consent.granted)
}

function hasAddress(contact: ReminderContact, channel: Channel): boolean {
  if (channel === 'email') return Boolean(contact.email)
  // The only postal address on record is the site's, and a landlord lives elsewhere.
  if (channel === 'letter') return contact.letterAddress && contact.role !== 'landlord'
  return Boolean(contact.phone)
}

function who(contact: ReminderContact): string {
  return contact.name ? `${contact.name} (${contact.role})` : `the ${contact.role}`
}
