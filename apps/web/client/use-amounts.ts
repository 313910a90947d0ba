'use client'
import { type AmountKind, type AmountRule, ruleOf } from '@almanac/units/amount-kinds'
import { firstUnit } from '@almanac/units/dimensions'
import { type ReadAmountOptions, readAmount } from '@almanac/units/read-amount'
import { useState } from 'react'
import { type Amount, type AmountText, settled } from './amounts.ts'
import { useSession } from './providers.tsx'
import { useLocale } from './use-locale.ts'

type Options<K extends string> = {
  /** Texts to begin with; a field left out begins empty, in the company's unit. */
  start?: Partial<Record<K, Partial<AmountText>>>
  required?: readonly K[]
  /** What else is known of an amount, as what fits its tank. */
  judges?: Partial<Record<K, ReadAmountOptions['judge']>>
}

/** Some amounts being typed. Text is read when it is sent; `read` answers null while one of them cannot be sent, and its field then says why; what it is told to leave out counts as empty. */
export function useAmounts<K extends string>(kinds: Record<K, AmountKind | AmountRule>, { start, required = [], judges }: Options<K> = {}) {
  const { unitSystem } = useSession().me.company
  const locale = useLocale()
  const [tried, setTried] = useState(false)
  const [typed, setTyped] = useState<Record<K, AmountText>>(() => {
    const texts = Object.entries<AmountKind | AmountRule>(kinds).map(([key, kind]) => {
      const empty = { text: '', unit: firstUnit(ruleOf(kind).dimension, unitSystem), why: '' }
      return [key, { ...empty, ...start?.[key as K] }]
    })
    return Object.fromEntries(texts) as Record<K, AmountText>
  })
  const field = (key: K) => ({
    kind: kinds[key],
    value: typed[key],
    onChange: (value: AmountText) => setTyped((now) => ({ ...now, [key]: value })),
    required: required.includes(key),
    judge: judges?.[key],
    tried,
  })
  const read = (leftOut: readonly K[] = []): Record<K, Amount | null> | null => {
    setTried(true)
    const read = Object.entries<AmountText>(typed).map(([name, { text, unit, why }]) => {
      const key = name as K
      if (leftOut.includes(key)) return [key, null] as const
      const amount = settled(readAmount(kinds[key], text, { unit, locale, judge: judges?.[key] }), why)
      return [key, amount === null && required.includes(key) ? undefined : amount] as const
    })
    if (read.some(([, amount]) => amount === undefined)) return null
    return Object.fromEntries(read) as Record<K, Amount | null>
  }
  /** What stands in a field at this moment, in the unit it is kept in; null where it is empty, cannot be read or cannot be. */
  const now = (key: K): number | null => {
    const { text, unit } = typed[key]
    const reading = readAmount(kinds[key], text, { unit, locale, judge: judges?.[key] })
    return reading.state === 'read' ? reading.value : null
  }
  return { field, read, now, typed }
}
