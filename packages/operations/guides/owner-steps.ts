import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { type Command, commandTools } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { sourceOn } from '@almanac/records/fact-source'
import { atStepStates, type GuideEnd } from '@almanac/records/guide-state'
import { stopOfAnswer } from '@almanac/records/visit-stop'
import { endsOwnersWork, type OwnerStep, stillOpen } from '@almanac/softener/procedure/owner-sheet'
import { oweCall } from '../shared/call-backs.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { endAndBeginBed } from '../shared/end-and-begin-bed.ts'
import type { ProposeInside } from '../shared/propose-job.ts'
import { kitOfBed } from '../shared/reserve-kit.ts'
import { type FoundGuide, findGuide, type GuideRef, stepGuide } from './find-guide.ts'
import { makeVisit } from './make-visit.ts'
import { readSheet } from './read-sheet.ts'

/** What an owner does by the link: goes on from the step they see, with what they answered; asks for a visit; says how the water is. */
export type OwnerAct =
  | { kind: 'next'; step: string; answers: Readonly<Record<string, string>> }
  | { kind: 'visit' }
  | { kind: 'ended'; end: GuideEnd }

/** What became of it: done; something left open; or nothing, since the link ended or has gone on already. */
export type OwnerActed = 'done' | 'missing' | 'gone'

/** On to the next step. Pressed twice it goes on once: whoever is no longer at the step that was shown stays where they are. */
async function goOn(
  tx: Tx,
  command: Command,
  { guide, sheet, propose }: { guide: FoundGuide; sheet: readonly OwnerStep[]; propose: ProposeInside },
  { step: shown, answers }: Extract<OwnerAct, { kind: 'next' }>,
): Promise<OwnerActed> {
  const at = sheet.findIndex((one) => one.id === guide.step)
  const step = sheet[at]
  if (!step || step.id !== shown) return 'gone'
  const [ask, answer] = Object.entries(answers).find((one) => endsOwnersWork(...one)) ?? []
  if (ask && answer && step.asks.some(({ id }) => id === ask)) {
    await makeVisit(tx, command, guide, sheet, { by: 'owner', stop: stopOfAnswer(ask, answer) }, propose)
    return 'done'
  }
  if (stillOpen(step, answers)) return 'missing'
  const next = sheet[at + 1]
  const event = next ? (next.hold ? 'hold' : 'next') : 'finish'
  return (await stepGuide(tx, command, guide, event, next ? { step: next.id } : {})) ? 'done' : 'gone'
}

/** The facts of the bed that the owner put in: those of the kit that we handed over for it; of resin that somebody else sold nobody knows more. */
async function newBedOf(tx: Tx, companyId: string, bedId: string, day: string) {
  const from = sourceOn('said by link', day)
  const ours = await tx.job.count({ where: { companyId, bedId, kind: 'delivery', state: 'closed' } })
  const kit = ours > 0 ? await kitOfBed(tx, companyId, bedId) : null
  if (!kit) return { resinKind: 'unknown' as const, volumeFt3: null, gravelLb: null, tubeCutIn: null, from }
  return { resinKind: kit.resinKind, volumeFt3: kit.resinFt3, gravelLb: kit.gravelLb, tubeCutIn: kit.tubeLengthIn, from }
}

const SAID: Readonly<Record<Exclude<GuideEnd, 'soft'>, string>> = {
  hard: 'the water is still hard',
  beads: 'beads come out of the taps. Call at once: softener in bypass, no hot water',
  wrong: 'something is wrong',
}

/** How the water is: soft ends the old bed today and begins one by the customer’s word; anything else is somebody to call. */
async function ended(tx: Tx, command: Command, guide: FoundGuide, end: GuideEnd): Promise<OwnerActed> {
  if (!(await stepGuide(tx, command, guide, end === 'soft' ? 'soft' : 'trouble', { ended: end }))) return 'gone'
  const { companyId } = command
  const { today } = await companyFacts(tx, companyId)
  const { bed, bedId, softener } = guide
  if (end !== 'soft') {
    const note = `By the owner’s link, after they put new resin in: ${SAID[end]}.`
    await oweCall(tx, command, { cause: 'asked', dueDay: today, siteId: softener.siteId, note })
  } else if (bed && bedId && dayOf(bed.endedLatest) === null) {
    const newBed = await newBedOf(tx, companyId, bedId, today)
    const days = { endedEarliest: today, endedLatest: today }
    await endAndBeginBed(tx, command, { tankId: bed.tankId, ...days, cause: 'unknown', visitId: null, newBed })
  }
  return 'done'
}

/** Does what an owner pressed on the link’s page. */
export async function ownerActs(of: GuideRef, act: OwnerAct, propose: ProposeInside): Promise<OwnerActed> {
  const { companyId, guideId } = of
  const found = await inCompany({ companyId }, (tx) => findGuide(tx, of))
  if (!found?.open) return 'gone'
  const sheet = found.guide.bedId ? await readSheet(companyId, found.guide.bedId, found.company.locale) : []
  return inCompany({ companyId }, async (tx) => {
    await lockRows(tx, companyId, 'owner_guide', [guideId])
    const now = await findGuide(tx, of)
    if (!now?.open) return 'gone'
    const { guide } = now
    const command = commandTools(tx, { companyId, personId: null }, 'guides.owner-acts', null)
    if (act.kind === 'ended') return ended(tx, command, guide, act.end)
    if (act.kind === 'visit') return (await makeVisit(tx, command, guide, sheet, { by: 'owner', stop: null }, propose)) ? 'done' : 'gone'
    if (!atStepStates.some((state) => state === guide.state)) return 'gone'
    return goOn(tx, command, { guide, sheet, propose }, act)
  })
}
