'use client'
import { useWords } from '@almanac/words/use-words'
import type { RefObject } from 'react'
import { savePicture } from './plot-picture.ts'
import type { PlotTable } from './plot-table.ts'

/** "Beds expected to fail, by month" → "beds-expected-to-fail-by-month". */
export const fileStem = (title: string) =>
  title
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'plot'

const cell = (text: string) => (/[",\n;]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

/** A plot's table as CSV (RFC 4180), with a mark by which spreadsheets read it as UTF-8. */
export function csvOf(table: PlotTable): string {
  return `\uFEFF${[table.heads, ...table.rows].map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`
}

function saveFile(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}

type Props = { title: string; table: PlotTable; picture: RefObject<HTMLElement | null>; asTable: boolean }

const press = 'min-h-6 underline decoration-edge underline-offset-4 hover:text-ink hover:decoration-ink in-[.field]:min-h-control'

/** Takes a plot away: its figures as CSV, its picture as PNG on a light ground. */
export function PlotExport({ title, table, picture, asTable }: Props) {
  const words = useWords('common')
  const png = async () => {
    const svg = picture.current?.querySelector('svg')
    if (svg) saveFile(await savePicture(svg, title), `${fileStem(title)}.png`)
  }
  return (
    <>
      <button
        type="button"
        className={press}
        onClick={() => saveFile(new Blob([csvOf(table)], { type: 'text/csv' }), `${fileStem(title)}.csv`)}
      >
        {words('saveFigures')}
        <span className="sr-only">: {title}</span>
      </button>
      {asTable ? null : (
        <button type="button" className={press} onClick={() => void png()}>
          {words('savePicture')}
          <span className="sr-only">: {title}</span>
        </button>
      )}
    </>
  )
}
