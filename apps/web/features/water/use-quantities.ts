'use client'
import { parseQuantity } from '@almanac/units/parse-quantity'
import { useState } from 'react'

export type Typed = { text: string; unit: string }
type Read<U extends string> = { value: { value: number; unit: U } | undefined; error: string | undefined }

/** Some quantities being typed, each with its unit. Text is read only when sent, so that nothing changes under the hand. */
export function useQuantities<K extends string>(start: Record<K, string>) {
  const [typed, setTyped] = useState<Record<K, Typed>>(
    () => Object.fromEntries(Object.entries(start).map(([key, unit]) => [key, { text: '', unit }])) as Record<K, Typed>,
  )
  const [errors, setErrors] = useState<Partial<Record<K, string>>>({})
  const field = (key: K) => ({
    value: typed[key].text,
    chosenUnit: typed[key].unit,
    error: errors[key],
    onChange: (event: { target: { value: string } }) => setTyped((now) => ({ ...now, [key]: { ...now[key], text: event.target.value } })),
    onUnit: (unit: string) => setTyped((now) => ({ ...now, [key]: { ...now[key], unit } })),
  })
  /** Reads one of them; undefined for an empty field. An unreadable one gets its sentence under the field. */
  const read = <U extends string>(key: K): Read<U> => {
    const { text, unit } = typed[key]
    if (!text.trim()) return { value: undefined, error: undefined }
    const parsed = parseQuantity(`${text.trim()} ${unit}`)
    if (parsed.ok) return { value: { value: parsed.value, unit: unit as U }, error: undefined }
    return { value: undefined, error: parsed.reason }
  }
  return { field, read, setErrors }
}
