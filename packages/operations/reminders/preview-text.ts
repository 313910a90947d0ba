import type { PreviewTextInput, TextPreview } from '@almanac/contract/own-texts'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { localeFor } from '@almanac/records/language'
import { now } from '@almanac/runtime/clock'
import { notFound } from '@almanac/runtime/errors'
import { textLength } from '@almanac/service-rules/messages/text-length'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { reminderFacts } from './compose-reminder.ts'
import { wrongWith } from './own-texts.ts'
import { LINK_PLACE, type ReminderFacts, reminderText } from './reminder-text.ts'

/** Made up, with a name longer than most. */
const madeUp = (today: string): Omit<ReminderFacts, 'companyName' | 'telephone'> => ({
  ...{ contactName: 'Maximiliana Featherstonehaugh-Cholmondeley', siteLabel: 'Old Mill Lane 114, rear building' },
  ...{ dueEarliest: addDays(today, 75), reason: { key: 'chloramine', sinceYear: 2021 }, life: { lived: 11, likely: 12 } },
  ...{ volumeFt3: 1.5, tank: { diameterIn: 10, heightIn: 54 }, notice: 1 },
})

const nobody = { contact: { name: null, language: null }, site: { label: '' }, dueEarliest: null, notice: 'due-window' }
const nothing = { forecast: null, tank: { diameterIn: null, heightIn: null }, volumeFt3: null }

type Asked = Pick<PreviewTextInput, 'bedId' | 'siteId'>

/** A bed of the company's, with where it is and whoever pays for it: the one that is named, or the first of a site. */
async function findBed(tx: Tx, companyId: string, { bedId, siteId }: Asked) {
  const holder = { customer: { select: { contacts: { where: { archivedAt: null } } } } } as const
  const site = { select: { label: true, tenures: { where: { toDay: null }, select: holder } } } as const
  const where = {
    companyId,
    ...(bedId !== null && { id: bedId }),
    ...(siteId !== null && { tank: { softener: { siteId } } }),
    endedLatest: null,
  }
  const bed = await tx.bed.findFirst({
    where,
    include: { forecast: true, tank: { include: { softener: { select: { site } } } } },
    orderBy: { id: 'asc' },
  })
  const place = bed?.tank.softener?.site
  if (!bed || !place) throw notFound('bed')
  const contacts = place.tenures.flatMap((one) => one.customer.contacts)
  const contact = contacts.find((one) => one.role === 'payer') ?? contacts[0] ?? nobody.contact
  return { contact, site: place, bed, dueEarliest: bed.forecast?.due10Day ?? null, notice: nobody.notice }
}

/** A text as it would read, in its own language; or what is wrong with it. Nothing is written. `link` is as long as a real one. */
export async function previewText(scope: Pick<Scope, 'companyId'>, input: PreviewTextInput, link: string): Promise<TextPreview> {
  const { companyId } = scope
  const { channel, language, bedId, siteId } = input
  return inCompany(scope, async (tx) => {
    const real = bedId !== null || siteId !== null
    const told = real ? await findBed(tx, companyId, input) : { ...nobody, bed: nothing }
    const { facts, today, unitSystem, companyLocale } = await reminderFacts(tx, { companyId, ...told }, now())
    const display = { locale: localeFor(language, companyLocale), unitSystem }
    const wrong = wrongWith(input, channel)
    const filled = wrong ? null : reminderText(input, real ? facts : { ...facts, ...madeUp(today) }, channel, today, display)
    if (!filled?.ok)
      return {
        subject: null,
        body: null,
        text: null,
        wrong: wrong ?? { field: 'body', sentence: filled?.reason ?? 'It can’t be filled in.' },
      }
    const { subject, body } = filled
    return { subject, body, wrong: null, text: channel === 'text' ? textLength(body.replaceAll(LINK_PLACE, link)) : null }
  })
}
