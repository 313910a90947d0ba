import type { HTMLAttributes, ReactNode } from 'react'

export type LineRowProps = {
  /** What the clock shows, or nothing. */
  time?: ReactNode
  rail: 'visit' | 'fit' | 'free' | 'done'
  children: ReactNode
  note?: ReactNode
  length?: ReactNode
  actions?: ReactNode
  /** What dragging by mouse needs: of a line that can be taken, or of one to drop on. */
  hand?: HTMLAttributes<HTMLLIElement>
}

const rails = {
  visit: 'border-l-4 border-ink bg-wash',
  done: 'border-l-4 border-done bg-wash',
  fit: 'border-l-4 border-dashed border-water',
  free: 'border-l-4 border-dotted border-line text-soft',
}

const forOffice = (rail: LineRowProps['rail']) => (rail === 'fit' || rail === 'free' ? 'print:hidden' : '')

/** The frame of each line of a sheet: the clock at the left, a rail, what it is, and what can be done. */
export function LineRow({ time, rail, children, note, length, actions, hand }: LineRowProps) {
  return (
    <li
      {...hand}
      className={`grid break-inside-avoid data-drop:outline data-drop:outline-dashed data-drop:outline-water grid-cols-[3.5rem_1fr] items-stretch gap-x-3 sm:grid-cols-[4rem_1fr] lg:grid-cols-[4rem_minmax(0,1fr)_8.5rem_4rem_11.5rem] xl:grid-cols-[4rem_minmax(0,1fr)_13rem_4.5rem_13.5rem] ${forOffice(rail)}`}
    >
      <span className="self-start pt-2 text-right tabular-nums">{time}</span>
      <div className={`min-w-0 px-3.5 py-2 ${rails[rail]}`}>{children}</div>
      <span className="self-center text-small text-soft max-lg:col-start-2 max-lg:pl-4.5 max-lg:empty:hidden">{note}</span>
      <span className="self-center text-soft max-lg:col-start-2 max-lg:hidden">{length}</span>
      <span className="flex flex-wrap items-center gap-2 self-center max-lg:col-start-2 max-lg:pl-4.5 max-lg:pb-1.5 max-lg:empty:hidden lg:justify-end print:hidden">
        {actions}
      </span>
    </li>
  )
}
