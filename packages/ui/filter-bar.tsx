'use client'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { Button } from './button.tsx'

export type FilterBarProps = {
  /** Read aloud: "Filter the beds". */
  label: string
  /** The filters, one after the other; `FilterSelect` reads like a sentence. */
  children: ReactNode
  /** Takes all filters away; shown only when given. */
  onClear?: () => void
  /** How many rows are ticked; the actions act on them. */
  selectedCount?: number
  actions?: ReactNode
}

/** Filters on the left, what can be done with the ticked rows on the right. */
export function FilterBar({ label, children, onClear, selectedCount, actions }: FilterBarProps) {
  const words = useWords('common')
  return (
    <div className="my-4 flex flex-wrap items-center gap-x-5 gap-y-3">
      <fieldset className="flex min-w-0 flex-wrap items-center gap-x-5 gap-y-2">
        <legend className="sr-only">{label}</legend>
        {children}
        {onClear ? (
          <Button kind="quiet" onClick={onClear}>
            {words('showAll')}
          </Button>
        ) : null}
      </fieldset>
      {actions ? (
        <div className="flex flex-wrap items-center gap-3 md:ml-auto print:hidden">
          {selectedCount === undefined ? null : (
            <output className="text-small text-soft">{words('selected', { count: String(selectedCount) })}</output>
          )}
          {actions}
        </div>
      ) : null}
    </div>
  )
}
