'use client'
import { NumberInput } from '@almanac/ui/number-input'
import { TextInput } from '@almanac/ui/text-input'
import { type AmountKind, type AmountRule, ruleOf } from '@almanac/units/amount-kinds'
import { type ReadAmountOptions, readAmount } from '@almanac/units/read-amount'
import { useWords } from '@almanac/words/use-words'
import type { Key } from '@almanac/words/words'
import { useState } from 'react'
import { type AmountText, isReason } from './amounts.ts'
import { useLocale } from './use-locale.ts'
import { useSayAmount } from './use-say-amount.ts'

export type AmountFieldProps = {
  id?: string
  label: string
  hint?: React.ReactNode
  required?: boolean
  kind: AmountKind | AmountRule
  value: AmountText
  onChange: (value: AmountText) => void
  /** Sending was tried: what is wrong is said of fields that nobody has left yet, too. */
  tried?: boolean
  /** What else is wrong with it, as the form or the server found. */
  error?: string
  /** What an empty field that is needed lacks. */
  lacking?: string
  /** The unit in words, where it is not that of the kind: "USD an hour". */
  unitWords?: string
  judge?: ReadAmountOptions['judge']
  onBlur?: () => void
  disabled?: boolean
  /** False on pages that keep nothing: an unusual amount is worked with as it is. */
  askOdd?: boolean
}

/**
 * The one field for a typed amount. Nothing changes under the hand: once the field is left, what cannot be read or cannot be is said in a sentence, and
 * what is unusual is asked back, with a field for the reason that keeps it.
 */
export function AmountField(props: AmountFieldProps) {
  const {
    id,
    label,
    hint,
    required,
    kind,
    value,
    onChange,
    tried = false,
    error,
    lacking,
    unitWords,
    judge,
    askOdd = true,
    disabled = false,
  } = props
  const locale = useLocale()
  const words = useWords('amount')
  const say = useSayAmount()
  const unitNames = useWords('unitWord')
  const unitNamed = (unit: string) => (unitNames.has(unit as Key<'unitWord'>) ? unitNames(unit as Key<'unitWord'>) : unit)
  const [left, setLeft] = useState(false)
  const { units } = ruleOf(kind).dimension
  const reading = readAmount(kind, value.text, { unit: value.unit, locale, judge })
  const said = (left || tried) && !disabled
  const odd = askOdd && reading.state === 'read' && said && reading.odd !== null ? say(reading.odd) : null
  const kept = isReason(value.why)
  const wrong =
    reading.state === 'refused' && said
      ? say(reading.said)
      : reading.state === 'empty' && required && tried
        ? (lacking ?? words('typeNumber'))
        : odd !== null && !kept
          ? odd
          : error
  return (
    <div className="flex min-w-0 flex-col gap-3">
      <NumberInput
        {...{ id, label, hint, required, disabled }}
        error={wrong}
        unit={unitWords ?? (units.length > 1 ? units : unitNamed(units[0] ?? ''))}
        chosenUnit={value.unit}
        onUnit={(unit) => onChange({ ...value, unit })}
        value={value.text}
        onChange={(event) => onChange({ ...value, text: event.target.value })}
        onBlur={() => {
          setLeft(true)
          props.onBlur?.()
        }}
      />
      {odd === null ? null : (
        <TextInput
          label={words('whyLabel', { label })}
          hint={kept ? odd : words('keptWith')}
          maxLength={200}
          value={value.why}
          onChange={(event) => onChange({ ...value, why: event.target.value })}
        />
      )}
    </div>
  )
}
