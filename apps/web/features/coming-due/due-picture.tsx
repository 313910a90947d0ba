'use client'
import type { DueMonths } from '@almanac/contract/due'
import type { RebedPlan } from '@almanac/contract/forecasts'
import type { DueGrouping } from '@almanac/records/forecast-run'
import { useDisplay } from '@almanac/ui/display'
import { FilterSelect } from '@almanac/ui/filter-select'
import { LongMonthPlot } from '@almanac/ui/long-month-plot'
import { MonthPlot } from '@almanac/ui/month-plot'
import { formatMonth } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import type { ReactNode } from 'react'
import { DueGroups } from './due-groups.tsx'
import type { DueFilters } from './use-due-filters.ts'

type Props = {
  picture: DueMonths
  /** Rebeds that the crews can do in a usual month. */
  capacity: number
  plan: RebedPlan | null
  filters: DueFilters
  change: (part: Partial<DueFilters>) => void
  /** Stands in the place of the picture of beds, where hours can be shown. */
  children: ReactNode
}

const BY: { value: string; label: string; by?: DueGrouping }[] = [
  { value: '', label: 'nothing' },
  { value: 'supply', label: 'supply', by: 'supply' },
  { value: 'area', label: 'town', by: 'area' },
  { value: 'resin', label: 'kind of resin', by: 'resin' },
]

/** The month picture: twelve months to choose from, or five years at a glance with the plan in them. */
export function DuePicture({ picture, capacity, plan, filters, change, children }: Props) {
  const display = useDisplay()
  const { months, years } = picture
  const planned = new Map(filters.supply ? [] : plan?.months.map((one) => [one.month, one.rebeds]))
  return (
    <>
      <div className="flex flex-wrap gap-x-6 gap-y-2">
        <FilterSelect
          label="Look ahead"
          value={filters.view ?? ''}
          onChange={(event) => change({ view: event.target.value === '5-years' ? '5-years' : undefined, month: undefined })}
          choices={[
            { value: '', label: '12 months' },
            { value: '5-years', label: '5 years, and the plan' },
          ]}
        />
        {filters.supply ? null : (
          <FilterSelect
            label="Group by"
            value={filters.by ?? ''}
            onChange={(event) => change({ by: BY.find((one) => one.value === event.target.value)?.by })}
            choices={BY}
          />
        )}
      </div>
      {filters.view === '5-years' ? (
        <>
          <LongMonthPlot
            title="Beds expected to fail, by month, five years"
            months={months.map(({ month, mean, low, high }) => ({ month, mean, low, high, planned: planned.get(month) }))}
            capacity={capacity}
          />
          <p className="max-w-[75ch] text-soft">
            Year by year, if nothing is done:{' '}
            {years.map(
              (one, i) =>
                `${i ? ', ' : ''}${showWhole(one.mean, display)} from ${formatMonth(`${one.from}-01`, display)} (${showWhole(one.low, display)} to ${showWhole(one.high, display)})`,
            )}
            . Each bed is counted once; replacements aren’t counted.
          </p>
        </>
      ) : (
        (children ?? (
          <MonthPlot
            title="Beds expected to fail, by month"
            months={months.slice(0, 12).map(({ month, mean, low, high, booked }) => ({ month, mean, p10: low, p90: high, booked }))}
            selected={filters.month ?? null}
            onSelect={(month) => change({ month: month ?? undefined })}
          />
        ))
      )}
      {filters.by && !filters.supply ? <DueGroups by={filters.by} /> : null}
    </>
  )
}
