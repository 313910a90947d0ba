import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import type { Channel } from '@almanac/records/channel'
import { oneOf } from '@almanac/records/choices'
import { languages, localeFor } from '@almanac/records/language'
import { lifeOf, reasonOf } from '@almanac/service-rules/reminders/reason'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { type ReminderFacts, reminderText } from './reminder-text.ts'

export type Composed = { contactId: string; channel: Channel; address: string; subject: string; body: string }

type Place = { street: string | null; town: string | null; region: string | null; postcode: string | null }

/** The lines of an envelope's window, as they are printed. */
const envelope = (name: string | null, site: Place) =>
  [name, site.street, [site.town, site.region, site.postcode].filter(Boolean).join(' ')].filter(Boolean).join('\n')

/** A reminder with all that is told from it. */
export const findReminder = (tx: Tx, companyId: string, reminderId: string) =>
  tx.reminder.findUnique({
    where: { companyId_id: { companyId, id: reminderId } },
    include: {
      contact: { include: { consents: true } },
      site: { include: { tenures: { where: { toDay: null }, select: { customerId: true } } } },
      bed: { include: { forecast: true } },
      answer: true,
    },
  })

type Found = NonNullable<Awaited<ReturnType<typeof findReminder>>>

/** Whether the contact no longer has to do with the site: archived, or of a customer who gave the house up. */
export const hasLeft = ({ contact, site }: Pick<Found, 'contact'> & { site: Pick<Found['site'], 'id' | 'tenures'> }) =>
  contact.archivedAt !== null || (contact.siteId !== site.id && !site.tenures.some((tenure) => tenure.customerId === contact.customerId))

/** What is told of a reminder at an instant, and in which locale its contact reads it. */
export async function reminderFacts(tx: Tx, found: Found, at: Date) {
  const { contact, site, bed, companyId } = found
  const company = await tx.company.findUniqueOrThrow({ where: { id: companyId } })
  const today = dayIn(company.timeZone, at)
  const began = dayOf(bed.forecast?.beganMiddleDay ?? null)
  const facts: ReminderFacts = {
    ...{ companyName: company.name, telephone: company.telephone, contactName: contact.name, siteLabel: site.label },
    dueEarliest: dayOf(found.dueEarliest),
    reason: reasonOf((bed.forecast?.drivers ?? []) as { key: string; yearsTaken: number; fromDay: string }[], began),
    life: lifeOf(began, dayOf(bed.forecast?.due50Day ?? null), today),
  }
  return { facts, today, timeZone: company.timeZone, locale: localeFor(oneOf(languages, contact.language), company.locale) }
}

/** What a reminder would say at that instant, to whom and where; or a sentence why nobody can be told. */
export async function composeReminder(tx: Tx, companyId: string, reminderId: string, at: Date): Promise<Composed | string> {
  const found = await findReminder(tx, companyId, reminderId)
  if (!found) return 'That reminder isn’t in this company.'
  const { contact, site } = found
  const channel = found.channel as Channel
  // Consent is read again at the last moment: it may have been withdrawn since the reminder was raised.
  const granted = !hasLeft(found) && contact.consents.some((consent) => consent.channel === channel && consent.granted)
  if (!granted) return 'The contact no longer agrees to be reached this way. Nothing was sent; ask at the next call.'
  const address = channel === 'email' ? contact.email : channel === 'letter' ? envelope(contact.name, site) : contact.phone
  if (!address) return 'The contact has no address or number for this any more. Nothing was sent; add one at the site.'
  const { facts, today, locale } = await reminderFacts(tx, found, at)
  return { contactId: contact.id, channel, address, ...reminderText(facts, channel, today, { locale }) }
}
