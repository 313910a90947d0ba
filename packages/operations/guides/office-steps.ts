import type { FixHold, GuideNow, GuideVisit, ReleaseHold, SendSteps } from '@almanac/contract/guides'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError, notFound } from '@almanac/runtime/errors'
import type { GuideEvent } from '@almanac/service-rules/guides/guide-states'
import { companyFacts } from '../shared/company-facts.ts'
import type { ProposeInside } from '../shared/propose-job.ts'
import { LINK_DAYS_MS } from './begin-guide.ts'
import { findGuide, stepGuide } from './find-guide.ts'
import { makeVisit } from './make-visit.ts'
import { lastDecision, readSheet } from './read-sheet.ts'

type Caller = Scope & { personId: string }
type Named = { guideId: string; version: number }

/** The guide of a command, locked, as its screen saw it. */
async function guideAt(tx: Tx, companyId: string, { guideId, version }: Named) {
  await lockRows(tx, companyId, 'owner_guide', [guideId])
  const found = await findGuide(tx, { companyId, guideId })
  if (!found) throw notFound('guide')
  const { guide } = found
  await expectChanged(guide.version === version ? 1 : 0, 'guide', version, {}, async () => ({ version: guide.version }))
  return found
}

/** The same while its link works: what is done to one that ended reaches nobody. */
async function openGuideAt(tx: Tx, companyId: string, named: Named) {
  const { guide, open } = await guideAt(tx, companyId, named)
  if (!open) throw new AppError('conflict', 'The owner’s link ended, so nothing was sent. Make a new link.')
  return guide
}

const NOT_NOW: Readonly<Partial<Record<GuideEvent, string>>> = {
  send: 'The steps were sent already. Nothing was changed; look at how far the owner is.',
  release: 'There’s no photo to look at right now. Nothing was changed.',
  fix: 'There’s no photo to look at right now. Nothing was changed.',
  visit: 'This is done or a visit already. Nothing was changed.',
}
const refused = (event: GuideEvent) => new AppError('conflict', NOT_NOW[event] ?? '')
const now = ({ guideId, version }: Named): GuideNow => ({ guideId, version: version + 1 })

/** Sends the owner the steps by the link they have: only for a bed of this softener whose last kept answer is go. The link then works for another week. */
export async function sendSteps(scope: Caller, input: SendSteps): Promise<GuideNow> {
  const { companyId } = scope
  const { bedId } = input
  const decision = await lastDecision(companyId, bedId)
  const { locale } = await inCompany(scope, (tx) => companyFacts(tx, companyId))
  const [first] = await readSheet(companyId, bedId, locale)
  return runCommand(scope, 'guides.send-steps', input, async (tx, command) => {
    const guide = await openGuideAt(tx, companyId, input)
    const where = { companyId, id: bedId, endedLatest: null, archivedAt: null, tank: { softenerId: guide.softenerId } }
    if (!first || !(await tx.bed.findFirst({ where, select: { id: true } }))) throw notFound('bed in service')
    if (decision?.verdict !== 'owner-with-helper')
      throw new AppError('conflict', 'Nobody has kept a go for this bed. Nothing was sent; answer “Owner or our crew?” first.')
    const linkUntil = new Date(command.at.getTime() + LINK_DAYS_MS)
    if (!(await stepGuide(tx, command, guide, 'send', { bedId, step: first.id, linkUntil }))) throw refused('send')
    return now(input)
  })
}

/** The photograph of a hold point shows what it must: the owner goes on. */
export async function releaseHold(scope: Caller, input: ReleaseHold): Promise<GuideNow> {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) => findGuide(tx, { companyId, guideId: input.guideId }))
  const bedId = found?.guide.bedId
  const sheet = bedId ? await readSheet(companyId, bedId, found.company.locale) : []
  return runCommand(scope, 'guides.release-hold', input, async (tx, command) => {
    const guide = await openGuideAt(tx, companyId, input)
    const next = sheet[sheet.findIndex((one) => one.id === guide.step) + 1]
    if (!next || !(await stepGuide(tx, command, guide, 'release', { step: next.id, toFix: null }))) throw refused('release')
    return now(input)
  })
}

/** The photograph doesn’t show it yet: the owner reads what to fix, and sends another. */
export async function fixHold(scope: Caller, input: FixHold): Promise<GuideNow> {
  return runCommand(scope, 'guides.fix-hold', input, async (tx, command) => {
    const guide = await openGuideAt(tx, scope.companyId, input)
    if (!(await stepGuide(tx, command, guide, 'fix', { toFix: input.toFix }))) throw refused('fix')
    return now(input)
  })
}

/** The office sends somebody instead; also when the link ended meanwhile. */
export async function visitInstead(scope: Caller, input: GuideVisit, propose: ProposeInside): Promise<GuideNow> {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) => findGuide(tx, { companyId, guideId: input.guideId }))
  const bedId = found?.guide.bedId
  const sheet = bedId ? await readSheet(companyId, bedId, found.company.locale) : []
  return runCommand(scope, 'guides.visit-instead', input, async (tx, command) => {
    const { guide } = await guideAt(tx, companyId, input)
    if (!(await makeVisit(tx, command, guide, sheet, { by: 'office', stop: null }, propose))) throw refused('visit')
    return now(input)
  })
}
