import type { VisitPage } from '@almanac/contract/visits'
import { judgeInTank, type TankRoom } from '@almanac/service-rules/amounts/judge-in-tank'
import type { Answer, Answers } from '@almanac/service-rules/close-out/record-from-answers'
import type { Ask, Procedure } from '@almanac/softener/procedure/procedure-types'
import { tankRoom } from '@almanac/softener/tanks/tank-room'
import { AMOUNT_KINDS, type AmountKind } from '@almanac/units/amount-kinds'
import { firstUnit } from '@almanac/units/dimensions'
import type { AmountDisplay } from '@almanac/units/display'
import { type AmountReading, type ReadAmountOptions, readAmount } from '@almanac/units/read-amount'
import type { UnitSystem } from '@almanac/units/unit-system'
import { settled } from '@/client/amounts'

/** What amounts of a visit are read by: the company's locale and units, and the tank as recorded. */
export type VisitReading = { locale: string; units: UnitSystem; tank: TankRoom | null }

/** The tank that the visit is about, as recorded; null where its size is not known. */
export const tankOfVisit = (visit: VisitPage, display: AmountDisplay): TankRoom | null =>
  tankRoom(visit.bed?.diameterIn ?? null, visit.bed?.heightIn ?? null, display)

/** Judges an amount by what the tank holds: the crew stands before it, so that its record may be wrong. */
export const judgeOnSite = (kind: AmountKind, tank: TankRoom | null): ReadAmountOptions['judge'] =>
  tank ? (value, unit) => judgeInTank(kind, value, unit, tank, { onSite: true }) : undefined

export const unitOrFirst = (kind: AmountKind, unit: string | null | undefined, units: UnitSystem): string =>
  unit || firstUnit(AMOUNT_KINDS[kind].dimension, units)

/** An amount typed on a visit. */
export const readOnSite = (kind: AmountKind, text: string, unit: string, { locale, units, tank }: VisitReading): AmountReading =>
  readAmount(kind, text, { unit: unitOrFirst(kind, unit, units), locale, judge: judgeOnSite(kind, tank) })

/** The first step that something is still asked at, or the last one: where to go back to from the closing form. */
export function firstOpenStep({ steps }: Pick<Procedure, 'steps'>, answers: Answers, by: VisitReading): number {
  const open = steps.findIndex((step) => step.asks.some((ask) => isOpen(ask, answers[ask.id], by)))
  return open < 0 ? steps.length - 1 : open
}

/** Whether a question still keeps the step open: nothing stands where something is needed, or a number that cannot be read, cannot be or is asked back. */
export function isOpen(ask: Ask, answer: Answer | undefined, reading: VisitReading): boolean {
  if (!answer?.text.trim()) return ask.required
  if (ask.amount === null) return false
  return settled(readOnSite(ask.amount, answer.text, answer.unit ?? '', reading), answer.why ?? '') === undefined
}
