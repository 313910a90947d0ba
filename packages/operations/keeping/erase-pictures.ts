import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'

type Tenure = { siteId: string; fromDay: Date | null; toDay: Date | null }

/** The links that were made for sites while they were held: by the day in the company's zone. */
async function guidesHeld(tx: Tx, companyId: string, tenures: readonly Tenure[]): Promise<string[]> {
  const { timeZone } = await companyFacts(tx, companyId)
  const found = await tx.ownerGuide.findMany({
    where: { companyId, softener: { siteId: { in: tenures.map((one) => one.siteId) } } },
    select: { id: true, createdAt: true, softener: { select: { siteId: true } } },
  })
  const held = (siteId: string, day: string) =>
    tenures.some((one) => one.siteId === siteId && (dayOf(one.fromDay) ?? day) <= day && day <= (dayOf(one.toDay) ?? day))
  return found.filter(({ softener, createdAt }) => held(softener.siteId, dayIn(timeZone, createdAt))).map((one) => one.id)
}

/**
 * Erases the photographs and signatures of the visits to a customer while they held a site, and the photographs that they sent by a link: who signed is taken off, and a task
 * takes the files out of the store. Those of whoever held the site before or after stay.
 */
export async function erasePictures(tx: Tx, command: Command, tenures: readonly Tenure[]): Promise<number> {
  const { companyId } = command
  const held = tenures.map(({ siteId, fromDay, toDay }) => ({
    job: { siteId },
    crewDay: { day: { ...(fromDay && { gte: fromDay }), ...(toDay && { lte: toDay }) } },
  }))
  if (held.length === 0) return 0
  const visits = await tx.visit.findMany({ where: { companyId, OR: held }, select: { id: true } })
  const of = { companyId, visitId: { in: visits.map((one) => one.id) } }
  await tx.signature.updateMany({ where: of, data: { name: null, version: { increment: 1 } } })
  const guides = await guidesHeld(tx, companyId, tenures)
  const { count } = await tx.picture.updateMany({
    where: { companyId, OR: [of, { guideId: { in: guides } }], state: { in: ['coming', 'stored'] } },
    data: { state: 'erased', version: { increment: 1 } },
  })
  if (count > 0) {
    await command.announce('picture', companyId)
    await command.enqueue('remove-pictures', {}, companyId)
  }
  return count
}
