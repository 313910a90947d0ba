import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import type { GuideState } from '@almanac/records/guide-state'
import { now } from '@almanac/runtime/clock'
import { type GuideEvent, nextGuideState } from '@almanac/service-rules/guides/guide-states'
import { dayIn } from '@almanac/units/calendar/zone-clock'

export type GuideRef = { companyId: string; guideId: string }

/** A guide with its company, and whether its link works; null for one that is not there. */
export async function findGuide(tx: Tx, { companyId, guideId }: GuideRef) {
  const guide = await tx.ownerGuide.findFirst({
    where: { companyId, id: guideId },
    include: {
      entries: true,
      pictures: { where: { state: 'stored' }, select: { kind: true } },
      softener: { select: { archivedAt: true, siteId: true, site: { select: { archivedAt: true } } } },
      bed: { select: { tankId: true, endedLatest: true, archivedAt: true } },
    },
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

export type FoundGuide = NonNullable<Awaited<ReturnType<typeof findGuide>>>['guide']

type More = { step?: string; toFix?: string | null; bedId?: string; linkUntil?: Date; ended?: string; jobId?: string }

/** Takes a guide that is locked one step on and tells the office's open pages; false, with nothing changed, where its state doesn't lead there. */
export async function stepGuide(
  tx: Tx,
  command: Command,
  guide: Pick<FoundGuide, 'id' | 'state' | 'version' | 'softenerId' | 'step'>,
  event: GuideEvent,
  more: More = {},
): Promise<boolean> {
  const { companyId } = command
  const next = nextGuideState(guide.state as GuideState, event)
  if (!next.ok) return false
  const version = guide.version + 1
  await tx.ownerGuide.update({
    where: { companyId_id: { companyId, id: guide.id } },
    data: { ...more, state: next.state, version },
  })
  await command.audit(event, 'softener', guide.softenerId, {
    ...{ guideId: guide.id, from: guide.state, to: next.state, step: more.step ?? guide.step },
  })
  await command.announce('guide', guide.id, version)
  return true
}
