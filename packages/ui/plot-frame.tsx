'use client'
import { useWords } from '@almanac/words/use-words'
import { type ReactNode, useRef, useState } from 'react'
import { FigureTable } from './figure-table.tsx'
import { PlotExport } from './plot-export.tsx'
import type { PlotTable } from './plot-table.ts'

export type PlotFrameProps = {
  /** Names the plot, for everyone. */
  title: string
  /** Show the title above the plot, not only to screen readers. */
  showTitle?: boolean
  /** What the signs mean, under the plot. */
  legend?: ReactNode
  table: PlotTable
  children: ReactNode
}

/** What every plot has around it: a name, a legend, the same figures as a table at one press, and both to take away. */
export function PlotFrame({ title, showTitle, legend, table, children }: PlotFrameProps) {
  const [asTable, setAsTable] = useState(false)
  const words = useWords('common')
  const picture = useRef<HTMLDivElement>(null)
  return (
    <figure className="my-4 min-w-0">
      <figcaption className={showTitle ? 'mb-2 font-semibold' : 'sr-only'}>{title}</figcaption>
      {asTable ? (
        <FigureTable
          caption={words('tableOf', { title })}
          heads={table.heads}
          rows={table.rows.map((cells) => ({ key: cells.join('|'), cells }))}
          className="max-h-96 overflow-auto border-t border-ink"
        />
      ) : (
        <div ref={picture}>{children}</div>
      )}
      <div className="mt-2 flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 text-small text-soft">
        <div className="flex flex-wrap gap-x-5 gap-y-1">{asTable ? null : legend}</div>
        <div className="flex flex-wrap gap-x-5 gap-y-1 print:hidden">
          <button
            type="button"
            aria-pressed={asTable}
            onClick={() => setAsTable(!asTable)}
            className="min-h-6 underline decoration-edge underline-offset-4 hover:text-ink hover:decoration-ink in-[.field]:min-h-control"
          >
            {words(asTable ? 'asPicture' : 'asTable')}
            <span className="sr-only">: {title}</span>
          </button>
          <PlotExport title={title} table={table} picture={picture} asTable={asTable} />
        </div>
      </div>
    </figure>
  )
}

/** One sign of a legend with its meaning. */
export function LegendItem({ sign, children }: { sign: ReactNode; children: ReactNode }) {
  return (
    <span className="inline-flex items-center gap-2">
      <svg aria-hidden="true" width="22" height="12" viewBox="0 0 22 12" className="shrink-0">
        {sign}
      </svg>
      {children}
    </span>
  )
}
