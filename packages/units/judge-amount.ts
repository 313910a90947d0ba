import { type AmountKind, type AmountRule, ruleOf } from './amount-kinds.ts'
import type { AmountSaid } from './amount-said.ts'

/** How likely an amount is. What is odd may be right and is asked back. What is impossible is refused. */
export type Judgement = { state: 'usual' } | { state: 'odd' | 'impossible'; said: AmountSaid }

export const USUAL: Judgement = { state: 'usual' }

/** An odd amount, asked back. */
export const odd = (said: AmountSaid): Judgement => ({ state: 'odd', said: { ...said, ask: true } })
export const impossible = (said: AmountSaid): Judgement => ({ state: 'impossible', said })

/**
 * Whether an amount can be, and is usual. `value` is in `unit`, one of the kind's units; what is said of it speaks that unit, since it is the one people
 * typed. Forms and the server ask this alike.
 */
export function judgeAmount(kind: AmountKind | AmountRule, value: number, unit: string): Judgement {
  const { name, dimension, least, most, usual, whole, above, example } = ruleOf(kind)
  const base = dimension.units[0] ?? ''
  const kept = dimension.convert(value, unit, base)
  if (!Number.isFinite(kept)) return impossible({ key: 'mustBeNumber', name })
  // A bound in another unit than its own is told as near as anyone needs it.
  const inUnit = (bound: number) => ({ value: unit === base ? bound : Number(dimension.convert(bound, base, unit).toPrecision(3)), unit })
  const amount = { value, unit }
  if (kept > most) return impossible({ key: 'tooMuch', name, amounts: { amount, bound: inUnit(most) } })
  if (kept < least && least === 0) return impossible({ key: 'belowZero', name, amounts: { amount } })
  if (kept < least) return impossible({ key: 'tooLittle', name, amounts: { amount, bound: inUnit(least) } })
  if (above && kept <= least) return impossible({ key: 'moreThan', name, amounts: { bound: inUnit(least) } })
  if (whole && !Number.isInteger(value)) return impossible({ key: 'whole', name, texts: { example } })
  if (!usual || (kept >= usual[0] && kept <= usual[1])) return USUAL
  return odd({ key: 'unusual', amounts: { amount, from: inUnit(usual[0]), until: inUnit(usual[1]) } })
}
