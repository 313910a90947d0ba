import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { type GuideMeasure, guideMeasures } from '@almanac/records/guide-measure'
import { type Language, localeFor } from '@almanac/records/language'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { OWNER_MEASURES } from '@almanac/softener/identify/owner-measures'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { readAmount } from '@almanac/units/read-amount'

type Guide = { companyId: string; guideId: string }

/** What whoever holds the link sees: their own tank’s measurements and the company’s number; no name, no address. */
export type LinkedGuide = {
  companyName: string
  telephone: string | null
  locale: string
  unitSystem: 'us' | 'metric'
  /** False once it ended, was withdrawn, the softener was archived or the house changed hands. */
  open: boolean
  entries: { measure: GuideMeasure; valueIn: number }[]
}

async function findGuide(tx: Tx, { companyId, guideId }: Guide) {
  const guide = await tx.ownerGuide.findFirst({
    where: { companyId, id: guideId },
    include: { entries: true, softener: { select: { archivedAt: true, siteId: true, site: { select: { archivedAt: true } } } } },
  })
  const company = await tx.company.findUnique({
    where: { id: companyId },
    select: { name: true, telephone: true, locale: true, unitSystem: true, timeZone: true },
  })
  if (!guide || !company) return null
  const { softener } = guide
  const since = dateOf(dayIn(company.timeZone, guide.createdAt))
  const sold = await tx.tenure.count({ where: { companyId, siteId: softener.siteId, fromDay: { gt: since } } })
  const ended = guide.withdrawnAt !== null || guide.linkUntil <= now() || sold > 0
  return { guide, company, open: !ended && softener.archivedAt === null && softener.site.archivedAt === null }
}

/** A guide as its link shows it; null for one that is not there. Reading it changes nothing. */
export async function readGuideLink(of: Guide): Promise<LinkedGuide | null> {
  return inCompany({ companyId: of.companyId }, async (tx) => {
    const found = await findGuide(tx, of)
    if (!found) return null
    const { guide, company, open } = found
    const entries = guide.entries.map(({ measure, valueIn }) => ({ measure: measure as GuideMeasure, valueIn }))
    return {
      ...{ companyName: company.name, telephone: company.telephone, locale: company.locale, open },
      unitSystem: company.unitSystem === 'metric' ? 'metric' : 'us',
      entries: open ? guideMeasures.flatMap((measure) => entries.filter((one) => one.measure === measure)) : [],
    }
  })
}

/** What became of what an owner typed: kept, nothing typed or no number, a number that no tank has, or a link that ended. */
export type Taken = 'kept' | 'unread' | 'impossible' | 'gone'

/** Keeps what an owner typed, read as every amount is; typed again it takes the place of what was there. The office’s open pages show it at once. */
export async function takeEntry(
  of: Guide,
  measure: GuideMeasure,
  text: string,
  unit: 'in' | 'cm',
  language: Language | null,
): Promise<Taken> {
  const { companyId, guideId } = of
  return inCompany({ companyId }, async (tx) => {
    const found = await findGuide(tx, of)
    if (!found?.open) return 'gone'
    const reading = readAmount(OWNER_MEASURES[measure], text, { unit, locale: localeFor(language, found.company.locale) })
    if (reading.state === 'empty') return 'unread'
    if (reading.state === 'refused') return reading.said.key === 'notNumber' ? 'unread' : 'impossible'
    const command = commandTools(tx, { companyId, personId: null }, 'guides.take-entry', null)
    const entered = { value: reading.entered.value, unit: reading.entered.unit }
    const data = { valueIn: reading.value, entered, at: command.at }
    await tx.guideEntry.upsert({
      where: { companyId_guideId_measure: { companyId, guideId, measure } },
      create: { companyId, id: newId(), guideId, measure, ...data },
      update: { ...data, version: { increment: 1 } },
    })
    await command.audit('measured by the owner', 'softener', found.guide.softenerId, { guideId, measure, valueIn: reading.value })
    await command.announce('guide', guideId)
    return 'kept'
  })
}
