import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import type { AskedByGuide } from '@almanac/records/asked-for'
import { oneOf } from '@almanac/records/choices'
import type { GuideState } from '@almanac/records/guide-state'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { openJobStates } from '@almanac/records/job-state'
import { procedureSteps } from '@almanac/records/procedure-step'
import type { VisitStop } from '@almanac/records/visit-stop'
import { openingAfter } from '@almanac/service-rules/close-out/safe-ending'
import { nextGuideState } from '@almanac/service-rules/guides/guide-states'
import { answersUpTo, type OwnerStep } from '@almanac/softener/procedure/owner-sheet'
import { oweCall } from '../shared/call-backs.ts'
import { companyFacts } from '../shared/company-facts.ts'
import type { ProposeInside } from '../shared/propose-job.ts'
import { type FoundGuide, stepGuide } from './find-guide.ts'

type Why = { by: 'owner' | 'office'; stop: VisitStop | null }

const measured = ({ entries }: FoundGuide, measure: string) => entries.find((one) => one.measure === measure)?.valueIn ?? null

/**
 * Makes a visit of what an owner began: a rebed of the bed, due today where the softener is shut off or open, with where they stopped; an inspection where nobody named a bed. A bed that
 * has its rebed already keeps that job, and somebody calls. An owner who asks is on the list of whom to call as well. The guide is locked.
 */
export async function makeVisit(
  tx: Tx,
  command: Command,
  guide: FoundGuide,
  sheet: readonly OwnerStep[],
  why: Why,
  propose: ProposeInside,
): Promise<boolean> {
  if (!nextGuideState(guide.state as GuideState, 'visit').ok) return false
  const { companyId } = command
  const { today } = await companyFacts(tx, companyId)
  const { siteId } = guide.softener
  const step = oneOf(procedureSteps, guide.step)
  const inService = guide.bed && guide.bed.endedLatest === null && guide.bed.archivedAt === null ? guide.bedId : null
  const open = inService
    ? await tx.job.findFirst({
        where: { companyId, bedId: inService, kind: { in: [...bedRenewingKinds] }, state: { in: [...openJobStates] } },
        select: { id: true },
      })
    : null
  const askedFor: AskedByGuide = {
    ...{ by: 'guide', step, stop: why.stop, photographs: guide.pictures.length },
    ...{ aroundIn: measured(guide, 'around'), heightIn: measured(guide, 'height') },
  }
  const begun = step !== null && openingAfter(answersUpTo(sheet, step)) !== 'untouched'
  const due = begun ? { dueEarliest: today, dueLatest: today } : {}
  const what = inService ? ({ kind: 'rebed', bedId: inService } as const) : ({ kind: 'inspection', softenerId: guide.softenerId } as const)
  const jobId = open?.id ?? (await propose(tx, command, { siteId, ...what, ...due, askedFor })).jobId
  await stepGuide(tx, command, guide, 'visit', { jobId })
  if (why.by === 'owner' || open) {
    const title = sheet.find((one) => one.id === step)?.title
    const note = `By the owner’s link: they would rather have someone come.${title ? ` They stopped at: ${title}.` : ''}`
    await oweCall(tx, command, { cause: 'asked', dueDay: today, siteId, jobId, note })
  }
  return true
}
