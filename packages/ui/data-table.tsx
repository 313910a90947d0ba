'use client'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { Checkbox } from './checkbox.tsx'
import type { LinkLike } from './link-like.ts'
import { SortHead, SortPicker, type TableSort } from './table-sort.tsx'

/** One column: what stands in its head and how a row fills its cell. */
export type Column<Row> = {
  key: string
  head: ReactNode
  /** A short word for the head where the row is stacked on a phone; otherwise the head itself. */
  phoneHead?: ReactNode
  cell: (row: Row) => ReactNode
  /** Numbers stand right. */
  align?: 'right'
  /** The head becomes a button that sorts by this key. */
  sortable?: boolean
  /** CSS width, as '34px' or '30%'. */
  width?: string
  /** On a phone each row becomes a stack: `title` stands first without its head, `hide` is left out. */
  phone?: 'title' | 'hide'
  /** Left out where the table is narrow: on a tablet and on paper. */
  wideOnly?: boolean
}

export type DataTableProps<Row> = {
  /** What the table lists; read aloud, not shown. */
  caption: string
  columns: readonly Column<Row>[]
  rows: readonly Row[]
  rowKey: (row: Row) => string
  /** Name of a row for its checkbox: "Orchard Lane 14". */
  rowName?: (row: Row) => string
  /** Address of the row's own page; the `title` column (or the first) becomes the link. */
  rowHref?: (row: Row) => string | undefined
  link?: LinkLike
  sort?: TableSort
  onSort?: (sort: TableSort) => void
  /** Keys of the ticked rows, perhaps on other pages too; with `onSelect` each row gets a checkbox. */
  selected?: ReadonlySet<string>
  onSelect?: (selected: ReadonlySet<string>) => void
  /** Stands in place of the rows when there are none. */
  empty?: ReactNode
  /** New rows are being fetched; the old ones stay as readable as before, under a line. */
  busy?: boolean
}

// Safari forgets that a table is a table once its display changes, as it does on a phone: the roles say it again.
const role = (name: string) => ({ role: name })

/** A semantic table that sorts, selects, links to its rows, and turns into stacked rows on a phone. */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, columns, rows, rowKey, rowName, rowHref, link: Link = 'a', sort, onSort, selected, onSelect, empty, busy } = props
  const words = useWords('common')
  if (rows.length === 0 && empty) return <>{empty}</>
  const titleKey = (columns.find((c) => c.phone === 'title') ?? columns[0])?.key
  const keys = rows.map(rowKey)
  const ticked = keys.filter((k) => selected?.has(k)).length

  const toggle = (these: readonly string[], on: boolean) => {
    const next = new Set(selected)
    for (const k of these) {
      if (on) next.add(k)
      else next.delete(k)
    }
    onSelect?.(next)
  }
  const allBox = (label: string, hideLabel: boolean) => (
    <Checkbox
      label={label}
      hideLabel={hideLabel}
      checked={keys.length > 0 && ticked === keys.length}
      partly={ticked > 0 && ticked < keys.length}
      onChange={(event) => toggle(keys, event.target.checked)}
    />
  )

  return (
    <div aria-busy={busy || undefined} className={busy ? 'shadow-[0_-2px_0_var(--water)]' : ''}>
      <div className="flex flex-wrap items-center justify-between gap-3 pb-2 md:hidden print:hidden">
        {onSelect ? allBox(words('selectAll'), false) : null}
        {onSort ? <SortPicker columns={columns} sort={sort} onSort={onSort} /> : null}
      </div>
      <table {...role('table')} className="w-full border-collapse text-left max-md:block">
        <caption className="sr-only">{caption}</caption>
        <thead {...role('rowgroup')} className="max-md:hidden">
          <tr {...role('row')} className="border-b border-ink text-small text-soft">
            {onSelect ? (
              <th {...role('columnheader')} scope="col" className="w-9 py-1 pr-2 print:hidden">
                {allBox(words('selectAll'), true)}
              </th>
            ) : null}
            {columns.map((c) => (
              <SortHead key={c.key} column={c} sort={sort} onSort={onSort} />
            ))}
          </tr>
        </thead>
        <tbody {...role('rowgroup')} className="max-md:block max-md:border-t max-md:border-ink">
          {rows.map((row, i) => {
            const key = keys[i] ?? String(i)
            const on = selected?.has(key) ?? false
            const href = rowHref?.(row)
            return (
              <tr
                key={key}
                {...role('row')}
                aria-selected={onSelect ? on : undefined}
                className={`border-b border-line hover:bg-wash max-md:relative max-md:flex max-md:flex-col max-md:gap-1 max-md:py-3 ${on ? 'bg-wash' : ''} ${onSelect ? 'max-md:pl-9' : ''}`}
              >
                {onSelect ? (
                  <td {...role('cell')} className="py-2 pr-2 print:hidden max-md:absolute max-md:top-2.5 max-md:left-0 max-md:p-0">
                    <Checkbox
                      label={words('select', { row: rowName?.(row) ?? words('rowNumber', { number: String(i + 1) }) })}
                      hideLabel
                      checked={on}
                      onChange={(event) => toggle([key], event.target.checked)}
                    />
                  </td>
                ) : null}
                {columns.map((c) => {
                  const title = c.key === titleKey
                  const inner = c.cell(row)
                  return (
                    <td
                      key={c.key}
                      {...role('cell')}
                      className={`py-2.5 pr-3 align-middle last:pr-0 max-md:p-0 ${c.align === 'right' ? 'md:not-last:pr-6 md:text-right' : ''} ${c.wideOnly ? 'md:max-xl:hidden' : ''} ${
                        c.phone === 'hide' || inner === null || inner === '' ? 'max-md:hidden' : ''
                      } ${title ? 'max-md:order-first' : 'max-md:flex max-md:items-start max-md:gap-3 max-md:[&>*]:min-w-0'}`}
                    >
                      {title ? null : (
                        <span aria-hidden="true" className="w-28 shrink-0 pt-px text-small text-soft md:hidden">
                          {c.phoneHead ?? c.head}
                        </span>
                      )}
                      {title && href ? (
                        <Link
                          href={href}
                          className="inline-block py-0.5 font-semibold underline decoration-transparent underline-offset-4 hover:decoration-ink max-md:decoration-edge"
                        >
                          {inner}
                        </Link>
                      ) : (
                        inner
                      )}
                    </td>
                  )
                })}
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}
