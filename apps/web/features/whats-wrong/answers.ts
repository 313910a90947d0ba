import type { CheckId } from '@almanac/softener/diagnosis/check-types'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import type { Evidence, Measured } from '@almanac/softener/diagnosis/evidence'
import { convertHardness } from '@almanac/units/hardness'
import { readLeadingNumber } from '@almanac/units/parse-number'
import { parseQuantity } from '@almanac/units/parse-quantity'
import type { UnitSystem } from '@almanac/units/unit-system'

/** Numbers one may type instead of an answer, as typed. */
export type NumberField = keyof Measured
export type Told = { answers: Partial<Record<CheckId, string>>; numbers: Partial<Record<NumberField, string>> }

export const NUMBER_FIELDS: readonly { field: NumberField; check: CheckId; label: string; kind: 'hardness' | 'percent' }[] = [
  { field: 'outletGpg', check: 'outlet', label: 'At the valve outlet', kind: 'hardness' },
  { field: 'tapGpg', check: 'outlet', label: 'At the cold tap', kind: 'hardness' },
  { field: 'capacityShare', check: 'capacity', label: 'Water softened, of what it should be', kind: 'percent' },
  { field: 'saltShareOfSetting', check: 'salt', label: 'Salt used, of what the setting asks', kind: 'percent' },
]

/** What the address holds: one key a check, and one a number. */
export function toldOfSearch(search: URLSearchParams): Told {
  const answers: Told['answers'] = {}
  for (const { id, answers: offered } of CHECKS) {
    const value = search.get(id)
    if (value && offered.some((one) => one.value === value)) answers[id] = value
  }
  const numbers: Told['numbers'] = {}
  for (const { field } of NUMBER_FIELDS) {
    const text = (search.get(field) ?? '').slice(0, 30)
    if (text) numbers[field] = text
  }
  return { answers, numbers }
}

export function searchOfTold({ answers, numbers }: Told, search: URLSearchParams): string {
  const next = new URLSearchParams(search)
  const put = (key: string, value: string | undefined) => (value ? next.set(key, value) : next.delete(key))
  for (const { id } of CHECKS) put(id, answers[id])
  for (const { field } of NUMBER_FIELDS) put(field, numbers[field])
  return next.toString()
}

export type ReadTold = { evidence: Evidence; errors: Partial<Record<NumberField, string>> }

/** Reads the numbers: hardness in the reader's unit unless another stands behind it, shares in per cent. */
export function readTold({ answers, numbers }: Told, units: UnitSystem): ReadTold {
  const measured: Measured = {}
  const errors: ReadTold['errors'] = {}
  for (const { field, kind } of NUMBER_FIELDS) {
    const text = numbers[field]?.trim()
    if (!text) continue
    const read = kind === 'hardness' ? readHardness(text, units) : readPercent(text)
    if (typeof read === 'string') errors[field] = read
    else measured[field] = read
  }
  return { evidence: { answers, measured }, errors }
}

function readHardness(text: string, units: UnitSystem): number | string {
  const read = parseQuantity(text, { defaultUnit: units === 'us' ? 'gpg' : 'mg/L', kinds: ['hardness'] })
  if (!read.ok) return read.reason
  const { unit, value } = read
  if (unit !== 'gpg' && unit !== 'mg/L' && unit !== 'dH' && unit !== 'fH' && unit !== 'mmol/L') return 'Type a hardness, such as 3 gpg.'
  return convertHardness(value, unit, 'gpg')
}

function readPercent(text: string): number | string {
  const read = readLeadingNumber(text)
  if (read === null || !['', '%'].includes(read.rest.trim())) return `“${text}” is not a number. Type per cent, such as 60.`
  return read.value / 100
}
