import type { CheckId } from '@almanac/softener/diagnosis/check-types'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import type { Evidence, Measured } from '@almanac/softener/diagnosis/evidence'
import { AMOUNT_KINDS } from '@almanac/units/amount-kinds'
import { firstUnit } from '@almanac/units/dimensions'
import { readAmount } from '@almanac/units/read-amount'
import type { UnitSystem } from '@almanac/units/unit-system'

/** Numbers one may type instead of an answer, as typed; the words of the page call each by its name. */
export type NumberField = keyof Measured
export type DiagnosisAnswers = { answers: Partial<Record<CheckId, string>>; numbers: Partial<Record<NumberField, string>> }

export const NUMBER_FIELDS: readonly {
  field: NumberField
  check: CheckId
  kind: 'hardness' | 'capacityShare' | 'saltShare'
}[] = [
  { field: 'outletGpg', check: 'outlet', kind: 'hardness' },
  { field: 'tapGpg', check: 'outlet', kind: 'hardness' },
  { field: 'capacityShare', check: 'capacity', kind: 'capacityShare' },
  { field: 'saltShareOfSetting', check: 'salt', kind: 'saltShare' },
]

/** What the address holds: one key a check, and one a number. */
export function answersOfSearch(search: URLSearchParams): DiagnosisAnswers {
  const answers: DiagnosisAnswers['answers'] = {}
  for (const { id, answers: offered } of CHECKS) {
    const value = search.get(id)
    if (value && offered.some((one) => one.value === value)) answers[id] = value
  }
  const numbers: DiagnosisAnswers['numbers'] = {}
  for (const { field } of NUMBER_FIELDS) {
    const text = (search.get(field) ?? '').slice(0, 30)
    if (text) numbers[field] = text
  }
  return { answers, numbers }
}

export function searchOfAnswers({ answers, numbers }: DiagnosisAnswers, search: URLSearchParams): string {
  const next = new URLSearchParams(search)
  const put = (key: string, value: string | undefined) => (value ? next.set(key, value) : next.delete(key))
  for (const { id } of CHECKS) put(id, answers[id])
  for (const { field } of NUMBER_FIELDS) put(field, numbers[field])
  return next.toString()
}

/** Reads the numbers: hardness in the reader's unit unless another stands behind it, shares in per cent. What cannot be read is left out, and its field says so. */
export function readTold({ answers, numbers }: DiagnosisAnswers, units: UnitSystem, locale: string): Evidence {
  const measured: Measured = {}
  for (const { field, kind } of NUMBER_FIELDS) {
    const reading = readAmount(kind, numbers[field] ?? '', { unit: firstUnit(AMOUNT_KINDS[kind].dimension, units), locale })
    if (reading.state === 'read') measured[field] = kind === 'hardness' ? reading.value : reading.value / 100
  }
  return { answers, measured }
}
