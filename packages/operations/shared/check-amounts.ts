import { AppError } from '@almanac/runtime/errors'
import { sayAmount } from '@almanac/service-rules/amounts/say-amount'
import type { AmountKind, AmountRule } from '@almanac/units/amount-kinds'
import { type Judgement, judgeAmount } from '@almanac/units/judge-amount'
import { wordsIn } from '@almanac/words/words-in'

/** An amount as a command brings it. `judge` knows more than its kind does, as what fits a tank. */
export type SentAmount = { kind: AmountKind | AmountRule; value: number; unit?: string; judge?: (value: number, unit: string) => Judgement }

/**
 * Refuses what cannot be, and what is unusual unless somebody says why: by the rules that the forms go by, so that nothing reaches the record past
 * them. `why` holds the reasons by name; `sent` the amounts, null or undefined where none came.
 */
export function checkAmounts(sent: Record<string, SentAmount | null | undefined>, why: Record<string, string> | undefined): void {
  for (const [field, amount] of Object.entries(sent)) {
    if (!amount) continue
    const unit = amount.unit ?? ''
    const general = judgeAmount(amount.kind, amount.value, unit)
    const special = general.state === 'impossible' ? undefined : amount.judge?.(amount.value, unit)
    const judged = special && special.state !== 'usual' ? special : general
    if (judged.state === 'usual' || (judged.state === 'odd' && why?.[field])) continue
    const { said } = judged
    throw new AppError(
      'invalid',
      (locale) => {
        const amounts = { words: wordsIn(locale, 'amount'), names: wordsIn(locale, 'amountName'), locale }
        return wordsIn(locale, 'refusal')('amount', { sentence: sayAmount(said, amounts) })
      },
      { field, [judged.state]: true },
    )
  }
}

/** What was typed, by name, each with its reason where it was insisted on: kept beside the canonical values. */
export function enteredOf<T extends { value: number; unit: string }>(
  typed: Record<string, T | null | undefined>,
  why: Record<string, string> | undefined,
): Record<string, { value: number; unit: string; why?: string }> {
  const kept = Object.entries(typed).flatMap(([key, one]) => {
    const reason = why?.[key]
    return one ? [[key, { value: one.value, unit: one.unit, ...(reason ? { why: reason } : {}) }] as const] : []
  })
  return Object.fromEntries(kept)
}
