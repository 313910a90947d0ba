import type { Desk } from '@almanac/contract/desk'
import { useDisplay } from '@almanac/ui/display'
import { showWhole } from '@almanac/units/format-number'
import type { DueFilters } from './use-due-filters.ts'

const CLEARED = { supply: undefined, age: undefined, chance: undefined, month: undefined, planned: undefined } as const

/** Which beds the list shows: those to call about, or all. The numbers are those of the head. */
export function DueTabs({ desk, list, change }: { desk: Desk; list: DueFilters['list']; change: (part: Partial<DueFilters>) => void }) {
  const display = useDisplay()
  const tabs = [
    { key: 'call' as const, name: 'To call', count: desk.toCall },
    { key: 'all' as const, name: 'All beds', count: desk.beds },
  ]
  return (
    <div id="beds" className="mt-8 flex scroll-mt-4 flex-wrap gap-x-6 border-b border-ink print:hidden">
      {tabs.map(({ key, name, count }) => (
        <button
          key={key}
          type="button"
          aria-pressed={list === key}
          onClick={() => change(key === 'call' ? { ...CLEARED, list: key, sort: 'chance' } : { list: key })}
          className={`-mb-px min-h-control border-b-3 px-0.5 ${list === key ? 'border-ink font-semibold' : 'border-transparent text-soft hover:text-ink'}`}
        >
          {name} <span className="ml-1">{showWhole(count, display)}</span>
        </button>
      ))}
    </div>
  )
}
