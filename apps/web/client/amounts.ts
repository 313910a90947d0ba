import type { AmountReading } from '@almanac/units/read-amount'

/** An amount as it stands in a form: text and unit as typed, and why it is right although it is unusual. */
export type AmountText = { text: string; unit: string; why: string }

/** An amount that may be sent: in the unit it is kept in, and as it was typed. */
export type Amount = { value: number; entered: { value: number; unit: string }; why: string | null }

/** Whether a reason says anything: what is unusual stands with one. */
export const isReason = (why: string): boolean => why.trim().length >= 3

/** What a reading is good for: an amount, null for an empty field, undefined for what cannot be sent yet, because it was refused or asked back. */
export function settled(reading: AmountReading, why: string): Amount | null | undefined {
  if (reading.state === 'empty') return null
  if (reading.state === 'refused') return undefined
  const reason = why.trim()
  if (reading.odd !== null && !isReason(reason)) return undefined
  const { value, unit } = reading.entered
  return { value: reading.value, entered: { value, unit }, why: reading.odd === null ? null : reason }
}

/** What was typed, as a command takes it, in one of the units it knows; the kept unit comes first among them. Undefined for an empty field. */
export function enteredIn<U extends string>(amount: Amount | null, units: readonly [U, ...U[]]): { value: number; unit: U } | undefined {
  if (amount === null) return undefined
  const unit = units.find((one) => one === amount.entered.unit)
  return unit === undefined ? { value: amount.value, unit: units[0] } : { value: amount.entered.value, unit }
}

/** The reasons of amounts that were insisted on, by name, as commands take them; undefined where there are none. */
export function reasonsOf(amounts: Record<string, Amount | null | undefined>): Record<string, string> | undefined {
  const reasons = Object.entries(amounts).flatMap(([name, amount]) => (amount?.why ? [[name, amount.why] as const] : []))
  return reasons.length > 0 ? Object.fromEntries(reasons) : undefined
}
