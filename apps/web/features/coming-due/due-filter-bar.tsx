'use client'
import type { DueMonths } from '@almanac/contract/due'
import { FilterBar } from '@almanac/ui/filter-bar'
import { FilterSelect } from '@almanac/ui/filter-select'
import { readNumber } from '@almanac/units/read-number'
import type { ReactNode } from 'react'
import type { DueFilters } from './use-due-filters.ts'

const AGES = [5, 8, 10, 12, 15, 20]
const CHANCES = [5, 10, 20, 40, 60]

type Props = {
  picture: DueMonths
  filters: DueFilters
  change: (part: Partial<DueFilters>) => void
  selectedCount: number
  children: ReactNode
}

const monthName = (month: string) =>
  new Date(`${month}-15T00:00:00Z`).toLocaleString('en-US', { month: 'long', year: 'numeric', timeZone: 'UTC' })

/** Filters of the list; the supply also chooses whose month picture is shown. */
export function DueFilterBar({ picture, filters, change, selectedCount, children }: Props) {
  const any = filters.supply || filters.age || filters.chance || filters.month
  return (
    <FilterBar
      label="Filter the beds"
      onClear={any ? () => change({ supply: undefined, age: undefined, chance: undefined, month: undefined }) : undefined}
      selectedCount={selectedCount}
      actions={children}
    >
      <FilterSelect
        label="Supply"
        value={filters.supply ?? ''}
        onChange={(event) => change({ supply: event.target.value || undefined })}
        choices={[{ value: '', label: 'all' }, ...picture.supplies.map((one) => ({ value: one.id, label: `${one.name} (${one.beds})` }))]}
      />
      <FilterSelect
        label="Age"
        value={String(filters.age ?? '')}
        onChange={(event) => change({ age: readNumber(event.target.value) ?? undefined })}
        choices={[{ value: '', label: 'any' }, ...AGES.map((years) => ({ value: String(years), label: `${years} years or more` }))]}
      />
      <FilterSelect
        label="Chance in 12 months"
        value={String(filters.chance ?? '')}
        onChange={(event) => change({ chance: readNumber(event.target.value) ?? undefined })}
        choices={[{ value: '', label: 'any' }, ...CHANCES.map((percent) => ({ value: String(percent), label: `${percent} % or more` }))]}
      />
      {filters.month ? <span>Middle day in {monthName(filters.month)}</span> : null}
    </FilterBar>
  )
}
