'use client'
import { useWords } from '@almanac/words/use-words'
import { type ReactNode, useId } from 'react'

/** By which column the rows stand, and which way. */
export type TableSort = { key: string; direction: 'ascending' | 'descending' }

type Sortable = { key: string; head: ReactNode; align?: 'right'; sortable?: boolean; width?: string; wideOnly?: boolean }

/** Pressing the sorted column turns it round; pressing another sorts by that, smallest first. */
function nextSort(sort: TableSort | undefined, key: string): TableSort {
  return { key, direction: sort?.key === key && sort.direction === 'ascending' ? 'descending' : 'ascending' }
}

function Arrow({ direction }: { direction?: TableSort['direction'] }) {
  return (
    <svg aria-hidden="true" width="9" height="12" viewBox="0 0 9 12" className="shrink-0 fill-current print:hidden">
      <path d="M4.5 0.5 L8.5 5 H0.5 Z" opacity={direction === 'ascending' ? 1 : 0.25} />
      <path d="M4.5 11.5 L8.5 7 H0.5 Z" opacity={direction === 'descending' ? 1 : 0.25} />
    </svg>
  )
}

/** Head cell of a column; a button when the column sorts. */
export function SortHead({ column, sort, onSort }: { column: Sortable; sort?: TableSort; onSort?: (sort: TableSort) => void }) {
  const { key, head, align, sortable, width, wideOnly } = column
  const direction = sort?.key === key ? sort.direction : undefined
  const right = align === 'right'
  return (
    <th
      scope="col"
      style={width ? { width } : undefined}
      aria-sort={sortable ? (direction ?? 'none') : undefined}
      className={`py-1 align-middle font-medium last:pr-0 ${right ? 'pr-6 text-right' : 'pr-3'} ${wideOnly ? 'md:max-xl:hidden' : ''}`}
    >
      {sortable && onSort ? (
        <button
          type="button"
          onClick={() => onSort(nextSort(sort, key))}
          className={`inline-flex min-h-6 items-center gap-1.5 hover:text-ink ${right ? 'flex-row-reverse' : ''} ${direction ? 'text-ink' : ''}`}
        >
          {head}
          <Arrow direction={direction} />
        </button>
      ) : (
        head
      )}
    </th>
  )
}

/** On a phone the heads are gone; this picks the order instead. */
export function SortPicker({
  columns,
  sort,
  onSort,
}: {
  columns: readonly Sortable[]
  sort?: TableSort
  onSort: (sort: TableSort) => void
}) {
  const id = useId()
  const words = useWords('common')
  const choices = columns.filter((c) => c.sortable && typeof c.head === 'string')
  if (choices.length === 0) return null
  return (
    <div className="flex items-center gap-2">
      <label htmlFor={id} className="text-small text-soft">
        {words('sortedBy')}
      </label>
      <select
        id={id}
        value={sort ? `${sort.key} ${sort.direction}` : ''}
        onChange={(event) => {
          const [key = '', direction] = event.target.value.split(' ')
          onSort({ key, direction: direction === 'descending' ? 'descending' : 'ascending' })
        }}
        className="min-h-9 rounded-sheet border border-edge bg-sheet px-2"
      >
        {sort ? null : <option value="">{words('asTheyCome')}</option>}
        {choices.flatMap((c) => [
          <option key={`${c.key}-up`} value={`${c.key} ascending`}>
            {words('rising', { column: String(c.head) })}
          </option>,
          <option key={`${c.key}-down`} value={`${c.key} descending`}>
            {words('falling', { column: String(c.head) })}
          </option>,
        ])}
      </select>
    </div>
  )
}
