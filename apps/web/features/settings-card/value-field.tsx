'use client'
import type { AmountKind } from '@almanac/units/amount-kinds'
import { AMOUNT_KINDS, type AmountRule } from '@almanac/units/amount-kinds'
import { readAmount } from '@almanac/units/read-amount'
import { numberText } from '@almanac/units/read-number'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { useLocale } from '@/client/use-locale'

type Props = {
  label: string
  kind: AmountKind
  /** The unit it is typed in, one of the kind's. */
  unit: string
  unitWords?: string
  hint?: string
  /** What holds now, in the unit the kind is kept in. */
  value: number | null
  /** Null when it was cleared: what is on record holds again. */
  onValue: (value: number | null) => void
}

/** A number that takes hold as it is typed; what cannot be right is told under it, and what held before goes on holding. */
export function ValueField({ label, kind, unit, unitWords, hint, value, onValue }: Props) {
  const locale = useLocale()
  const [typed, setTyped] = useState<string | null>(null)
  const rule: AmountRule = AMOUNT_KINDS[kind]
  const shown = value === null ? '' : numberText(rule.dimension.convert(value, rule.dimension.units[0] ?? '', unit), locale, 1)
  const text = typed ?? shown
  return (
    <AmountField
      label={label}
      hint={hint}
      kind={kind}
      unitWords={unitWords ?? unit}
      askOdd={false}
      tried
      value={{ text, unit, why: '' }}
      onChange={(next) => {
        setTyped(next.text)
        const reading = readAmount(kind, next.text, { unit, locale })
        if (reading.state !== 'refused') onValue(reading.state === 'read' ? reading.value : null)
      }}
      onBlur={() => {
        if (readAmount(kind, text, { unit, locale }).state !== 'refused') setTyped(null)
      }}
    />
  )
}
