'use client'
import type { ImportColumn } from '@almanac/contract/imports'
import { ImportColumnChoice } from '@almanac/contract/imports'
import { Select } from '@almanac/ui/select'

const DAY_FIELDS = new Set<ImportColumn['field']>(['installed', 'bedBegan', 'lastSeen', 'notes'])

const HARDNESS = [
  { value: 'gpg', label: 'grains per gallon' },
  { value: 'mg/L', label: 'mg/L (ppm)' },
  { value: 'dH', label: '°dH' },
  { value: 'fH', label: '°fH' },
  { value: 'mmol/L', label: 'mmol/L' },
  { value: 'each-by-size', label: 'what fits each number and its supply' },
]
const CONCENTRATION = [
  { value: 'mg/L', label: 'mg/L (ppm)' },
  { value: 'ug/L', label: 'µg/L (ppb)' },
]
const VOLUME = [
  { value: 'ft3', label: 'cubic feet' },
  { value: 'L', label: 'litres' },
]
const ORDER = [
  { value: 'undecided', label: 'ask for each date like this' },
  { value: 'day-first', label: 'the day' },
  { value: 'month-first', label: 'the month' },
]

type Detail = { key: 'hardnessUnit' | 'concentrationUnit' | 'volumeUnit' | 'dayOrder'; label: string; choices: typeof ORDER; none?: string }

function detailOf(field: ImportColumn['field']): Detail | null {
  const unit = 'A number without a unit is in'
  if (field === 'hardness') return { key: 'hardnessUnit', label: unit, choices: HARDNESS, none: 'choose a unit' }
  if (field === 'iron' || field === 'chlorine')
    return { key: 'concentrationUnit', label: unit, choices: CONCENTRATION, none: 'choose a unit' }
  if (field === 'resinVolume' || field === 'tank') return { key: 'volumeUnit', label: unit, choices: VOLUME, none: 'choose a unit' }
  return DAY_FIELDS.has(field) ? { key: 'dayOrder', label: 'In 03/04/2015 first comes', choices: ORDER } : null
}

/** The unit or the order of dates a column needs, where it needs one. */
export function ColumnDetail({
  column,
  name,
  onChange,
}: {
  column: ImportColumn
  name: string
  onChange: (part: Partial<ImportColumn>) => void
}) {
  const detail = detailOf(column.field)
  if (!detail) return null
  const { key, label, choices, none } = detail
  return (
    <Select
      label={<span className="text-small text-soft">{label}</span>}
      aria-label={`${name}: ${label}`}
      value={column[key] ?? (key === 'dayOrder' ? 'undecided' : '')}
      choices={choices}
      none={none}
      onChange={(event) => onChange({ [key]: ImportColumnChoice.shape[key].safeParse(event.target.value || undefined).data })}
    />
  )
}
