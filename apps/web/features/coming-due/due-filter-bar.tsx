'use client'
import type { DueMonths } from '@almanac/contract/due'
import type { RebedPlan } from '@almanac/contract/forecasts'
import { useDisplay } from '@almanac/ui/display'
import { FilterBar } from '@almanac/ui/filter-bar'
import { FilterSelect } from '@almanac/ui/filter-select'
import { formatLongMonth } from '@almanac/units/format-day'
import { formatPercent } from '@almanac/units/format-number'
import { readNumber } from '@almanac/units/read-number'
import type { ReactNode } from 'react'
import type { DueFilters } from './use-due-filters.ts'

const AGES = [5, 8, 10, 12, 15, 20]
const CHANCES = [5, 10, 20, 40, 60]

type Props = {
  picture: DueMonths
  plan: RebedPlan | null
  filters: DueFilters
  change: (part: Partial<DueFilters>) => void
  selectedCount: number
  children: ReactNode
}

/** Filters of the list; the supply also chooses whose month picture is shown. */
export function DueFilterBar({ picture, plan, filters, change, selectedCount, children }: Props) {
  const display = useDisplay()
  const any = filters.supply || filters.age || filters.chance || filters.month || filters.planned
  return (
    <FilterBar
      label="Filter the beds"
      onClear={
        any ? () => change({ supply: undefined, age: undefined, chance: undefined, month: undefined, planned: undefined }) : undefined
      }
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
        label="Chance of failing in 12 months"
        value={String(filters.chance ?? '')}
        onChange={(event) => change({ chance: readNumber(event.target.value) ?? undefined })}
        choices={[
          { value: '', label: 'any' },
          ...CHANCES.map((percent) => ({ value: String(percent), label: `${formatPercent(percent / 100, display)} or more` })),
        ]}
      />
      {plan && plan.months.length > 0 ? (
        <FilterSelect
          label="Planned in"
          value={filters.planned ?? ''}
          onChange={(event) => change({ planned: event.target.value || undefined })}
          choices={[
            { value: '', label: 'any month' },
            ...plan.months
              .filter((one) => one.rebeds > 0)
              .map((one) => ({ value: one.month, label: `${formatLongMonth(one.month, display)} (${one.rebeds})` })),
          ]}
        />
      ) : null}
      {filters.month ? <span>Middle day in {formatLongMonth(filters.month, display)}</span> : null}
    </FilterBar>
  )
}
