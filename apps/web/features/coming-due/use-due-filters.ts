'use client'
import { type DueGrouping, dueGroupings } from '@almanac/records/forecast-run'
import { readNumber } from '@almanac/units/read-number'
import { usePathname, useRouter, useSearchParams } from 'next/navigation'

export type DueSort = 'chance' | 'due' | 'age' | 'failed' | 'telling'
export type DueFilters = {
  /** Beds to call about, or all; where a filter is set, all. */
  list: 'call' | 'all'
  supply?: string
  age?: number
  chance?: number
  month?: string
  /** Only beds that the levelled plan gives to this month. */
  planned?: string
  view?: '5-years'
  by?: DueGrouping
  sort: DueSort
}

const SORTS: readonly DueSort[] = ['chance', 'due', 'age', 'failed', 'telling']
const NARROWING = ['supply', 'age', 'chance', 'month', 'planned', 'sort'] as const

const figure = (text: string | null) => readNumber(text ?? '') ?? undefined

/** The filters of the list, kept in the address so that a view can be shared and returned to. */
export function useDueFilters(): [DueFilters, (change: Partial<DueFilters>) => void] {
  const search = useSearchParams()
  const router = useRouter()
  const path = usePathname()
  const isNarrowed = NARROWING.some((name) => search.get(name) !== null)
  const filters: DueFilters = {
    list: search.get('list') === 'all' || isNarrowed ? 'all' : 'call',
    supply: search.get('supply') ?? undefined,
    age: figure(search.get('age')),
    chance: figure(search.get('chance')),
    month: search.get('month') ?? undefined,
    planned: search.get('planned') ?? undefined,
    view: search.get('view') === '5-years' ? '5-years' : undefined,
    by: dueGroupings.find((one) => one === search.get('by')),
    sort: SORTS.find((one) => one === search.get('sort')) ?? 'chance',
  }
  const change = (part: Partial<DueFilters>) => {
    const next = new URLSearchParams()
    for (const [key, value] of Object.entries({ ...filters, ...part }))
      if (value !== undefined && value !== '') next.set(key, String(value))
    if (next.get('sort') === 'chance') next.delete('sort')
    // The list to call is the first one, and any filter speaks of all beds: the address names the list where neither says it.
    if (next.get('list') === 'call' || NARROWING.some((name) => next.has(name))) next.delete('list')
    router.replace(next.size ? `${path}?${next}` : path, { scroll: false })
  }
  return [filters, change]
}
