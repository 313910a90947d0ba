import type { Tx } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { oneOf } from '@almanac/records/choices'
import { type GuideMeasure, guideMeasures } from '@almanac/records/guide-measure'
import { atStepStates, type GuideEnd, type GuideState, guideEnds } from '@almanac/records/guide-state'
import { type Language, localeFor } from '@almanac/records/language'
import { type GuidePhotographKind, guidePhotographKinds } from '@almanac/records/picture-kind'
import { newId } from '@almanac/runtime/ids'
import { type Opening, openingAfter } from '@almanac/service-rules/close-out/safe-ending'
import { OWNER_MEASURES } from '@almanac/softener/identify/owner-measures'
import { answersUpTo, type OwnerStep } from '@almanac/softener/procedure/owner-sheet'
import { readAmount } from '@almanac/units/read-amount'
import { findGuide, type GuideRef } from './find-guide.ts'
import { readSheet } from './read-sheet.ts'

/** A step as the link shows it: where it stands, and whether the owner is at it or only looks back. */
type ShownStep = OwnerStep & { number: number; total: number; now: boolean; before: string | null }

/** What whoever holds the link sees: their own tank’s measurements and steps and the company’s number; no name, no address. */
export type LinkedGuide = {
  companyName: string
  telephone: string | null
  locale: string
  unitSystem: 'us' | 'metric'
  /** False once it ended, was withdrawn, the softener was archived or the house changed hands. */
  open: boolean
  state: GuideState
  entries: { measure: GuideMeasure; valueIn: number }[]
  /** The kinds of which a photograph is here. */
  photographs: GuidePhotographKind[]
  step: ShownStep | null
  toFix: string | null
  /** Once it became a visit: how open the softener is, and whether the heater is shut off. */
  left: { opening: Opening; heaterOff: boolean } | null
  ended: GuideEnd | null
}

/** The step to show: the one asked for, if the owner has come so far, else where they are; null for a sheet that has no such step any more. */
function shownStep(sheet: readonly OwnerStep[], at: string | null, look?: string): ShownStep | null {
  const here = sheet.findIndex((one) => one.id === at)
  const asked = sheet.findIndex((one) => one.id === look)
  const index = asked >= 0 && asked <= here ? asked : here
  const step = sheet[index]
  return step ? { ...step, number: index + 1, total: sheet.length, now: index === here, before: sheet[index - 1]?.id ?? null } : null
}

/** A guide as its link shows it, in a language and at a step that its reader may ask for; null for one that is not there. Reading it changes nothing. */
export async function readGuideLink(
  of: GuideRef,
  { language, look }: { language?: Language | null; look?: string } = {},
): Promise<LinkedGuide | null> {
  const { companyId } = of
  const found = await inCompany({ companyId }, (tx) => findGuide(tx, of))
  if (!found) return null
  const { guide, company } = found
  const locale = localeFor(language ?? null, company.locale)
  const state = guide.state as GuideState
  const atStep = oneOf(atStepStates, state) !== null
  const needsSheet = found.open && guide.bedId !== null && (atStep || state === 'visit')
  const sheet = needsSheet ? await readSheet(companyId, guide.bedId ?? '', locale) : []
  const step = atStep ? shownStep(sheet, guide.step, look) : null
  // A bed that came out meanwhile has no steps any more.
  const open = found.open && !(atStep && step === null)
  const entries = guide.entries.map(({ measure, valueIn }) => ({ measure: measure as GuideMeasure, valueIn }))
  const answers = guide.step ? answersUpTo(sheet, guide.step as OwnerStep['id']) : {}
  return {
    ...{ companyName: company.name, telephone: company.telephone, locale, open, state, step: open ? step : null },
    unitSystem: company.unitSystem === 'metric' ? 'metric' : 'us',
    entries: open ? guideMeasures.flatMap((measure) => entries.filter((one) => one.measure === measure)) : [],
    photographs: open ? guidePhotographKinds.filter((kind) => guide.pictures.some((one) => one.kind === kind)) : [],
    toFix: open ? guide.toFix : null,
    left: state === 'visit' ? { opening: openingAfter(answers), heaterOff: answers['hot-side-closed'] === 'yes' } : null,
    ended: oneOf(guideEnds, guide.ended),
  }
}

/** What became of what an owner typed: kept, nothing typed or no number, a number that no tank has, or a link that ended. */
export type Taken = 'kept' | 'unread' | 'impossible' | 'gone'

/** Keeps what an owner typed, read as every amount is; typed again it takes the place of what was there. The office’s open pages show it at once. */
export async function takeEntry(
  of: GuideRef,
  measure: GuideMeasure,
  text: string,
  unit: 'in' | 'cm',
  language: Language | null,
): Promise<Taken> {
  return inCompany({ companyId: of.companyId }, (tx) => entryIn(tx, of, measure, { text, unit, language }))
}

async function entryIn(
  tx: Tx,
  of: GuideRef,
  measure: GuideMeasure,
  { text, unit, language }: { text: string; unit: 'in' | 'cm'; language: Language | null },
): Promise<Taken> {
  const { companyId, guideId } = of
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
}
