'use client'
import { NumberInput } from '@almanac/ui/number-input'
import { readLeadingNumber } from '@almanac/units/parse-number'
import { useState } from 'react'

type Props = {
  label: string
  unit: string
  hint?: string
  /** What holds now, in the unit shown. */
  value: number | null
  least: number
  most: number
  whole?: boolean
  /** Null when it was cleared: what is on record holds again. */
  onValue: (value: number | null) => void
}

/** A number that takes hold as it is typed; what cannot be right is told under it, and what held before goes on holding. */
export function ValueField({ label, unit, hint, value, least, most, whole, onValue }: Props) {
  const [typed, setTyped] = useState<string | null>(null)
  const shown = value === null ? '' : String(Number(value.toFixed(1)))
  const { error } = read(typed ?? shown, least, most, whole ?? false, unit)
  return (
    <NumberInput
      label={label}
      unit={unit}
      hint={hint}
      error={error}
      value={typed ?? shown}
      onChange={(event) => {
        const text = event.target.value
        setTyped(text)
        const found = read(text, least, most, whole ?? false, unit)
        if (!found.error) onValue(found.value)
      }}
      onBlur={() => {
        if (!error) setTyped(null)
      }}
    />
  )
}

function read(text: string, least: number, most: number, whole: boolean, unit: string): { value: number | null; error?: string } {
  if (text.trim() === '') return { value: null }
  const found = readLeadingNumber(text.trim())
  if (found === null || found.rest.trim() !== '') return { value: null, error: `“${text}” is not a number. Type one such as 18.` }
  const { value } = found
  if (whole && !Number.isInteger(value)) return { value: null, error: 'Type a whole number.' }
  if (value < least || value > most) return { value: null, error: `Between ${least} and ${most}${unit.startsWith('×') ? '' : ` ${unit}`}.` }
  return { value }
}
