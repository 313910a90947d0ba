import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import type { Channel } from '@almanac/records/channel'
import { oneOf } from '@almanac/records/choices'
import { languageOf, languages, localeFor } from '@almanac/records/language'
import { noticeNumber } from '@almanac/service-rules/reminders/further-notices'
import { lifeOf, reasonOf } from '@almanac/service-rules/reminders/reason'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import type { UnitSystem } from '@almanac/units/unit-system'
import { type ReminderFacts, reminderText } from './reminder-text.ts'
import { type OwnText, standardText } from './standard-text.ts'

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
      bed: { include: { forecast: true, tank: true, reminders: { select: { answer: { select: { createdAt: true } } } } } },
      answer: true,
    },
  })

type Found = NonNullable<Awaited<ReturnType<typeof findReminder>>>

/** Whether the contact no longer has to do with the site: archived, or of a customer who gave the house up. */
export const hasLeft = ({ contact, site }: Pick<Found, 'contact'> & { site: Pick<Found['site'], 'id' | 'tenures'> }) =>
  contact.archivedAt !== null || (contact.siteId !== site.id && !site.tenures.some((tenure) => tenure.customerId === contact.customerId))

/** Whether the customer has said something of this bed by a link since the reminder was made: another notice would only ask again. */
export const hasAnswered = ({ createdAt, bed }: { createdAt: Date; bed: { reminders: { answer: { createdAt: Date } | null }[] } }) =>
  bed.reminders.some(({ answer }) => answer !== null && answer.createdAt > createdAt)

/** What a reminder tells of: a bed, where it is, and who is told. */
export type Told = {
  companyId: string
  contact: { name: string | null; language: string | null }
  site: { label: string }
  bed: Pick<Found['bed'], 'forecast' | 'volumeFt3'> & { tank: Pick<Found['bed']['tank'], 'diameterIn' | 'heightIn'> }
  dueEarliest: Date | null
  notice: string
}

/** What is told of a reminder at an instant, and in which locale and units its contact reads it. */
export async function reminderFacts(tx: Tx, { companyId, contact, site, bed, dueEarliest, notice }: Told, at: Date) {
  const company = await tx.company.findUniqueOrThrow({ where: { id: companyId } })
  const today = dayIn(company.timeZone, at)
  const began = dayOf(bed.forecast?.beganMiddleDay ?? null)
  const { diameterIn, heightIn } = bed.tank
  const facts: ReminderFacts = {
    ...{ companyName: company.name, telephone: company.telephone, contactName: contact.name, siteLabel: site.label },
    ...{ dueEarliest: dayOf(dueEarliest), volumeFt3: bed.volumeFt3, notice: noticeNumber(notice) ?? 1 },
    tank: diameterIn !== null && heightIn !== null ? { diameterIn, heightIn } : null,
    reason: reasonOf((bed.forecast?.drivers ?? []) as { key: string; yearsTaken: number; fromDay: string }[], began),
    life: lifeOf(began, dayOf(bed.forecast?.due50Day ?? null), today),
  }
  const unitSystem: UnitSystem = company.unitSystem === 'metric' ? 'metric' : 'us'
  const { locale: companyLocale } = company
  return { facts, today, unitSystem, companyLocale, locale: localeFor(oneOf(languages, contact.language), companyLocale) }
}

/** The company's own text of a channel and language; the standard one where it has none. */
async function textFor(tx: Tx, companyId: string, channel: Channel, locale: string): Promise<OwnText> {
  const own = await tx.ownText.findFirst({
    where: { companyId, channel, language: languageOf(locale) },
    select: { subject: true, body: true },
  })
  const standard = standardText(channel, locale)
  return own?.body == null ? standard : { subject: own.subject ?? standard.subject, body: own.body }
}

/** What a reminder would say at that instant, to whom and where; or a sentence why nobody can be told. */
export async function composeReminder(tx: Tx, companyId: string, reminderId: string, at: Date): Promise<Composed | string> {
  const found = await findReminder(tx, companyId, reminderId)
  if (!found) return 'That reminder isn’t in this company.'
  const { contact, site } = found
  const channel = found.channel as Channel
  if (hasAnswered(found)) return 'The customer has answered since. Nothing was sent; see their answer.'
  // Consent is read again at the last moment: it may have been withdrawn since the reminder was raised.
  const granted = !hasLeft(found) && contact.consents.some((consent) => consent.channel === channel && consent.granted)
  if (!granted) return 'The contact no longer agrees to be reached this way. Nothing was sent; ask at the next call.'
  const email = contact.email === contact.deadEmail ? null : contact.email
  const address = channel === 'email' ? email : channel === 'letter' ? envelope(contact.name, site) : contact.phone
  if (!address) return 'The contact has no address or number for this any more. Nothing was sent; add one at the site.'
  const { facts, today, locale, unitSystem } = await reminderFacts(tx, found, at)
  const text = reminderText(await textFor(tx, companyId, channel, locale), facts, channel, today, { locale, unitSystem })
  if (!text.ok) return `Your own text can’t be filled in. Nothing was sent; fix it under Reminder texts. ${text.reason}`
  return { contactId: contact.id, channel, address, subject: text.subject, body: text.body }
}
