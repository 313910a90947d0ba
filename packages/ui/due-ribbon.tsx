import { formatMonth } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { dayShare, yearTicks } from './day-scale.ts'
import { useDisplay } from './display.tsx'

/** The time axis that ribbons of one list share: two days as 'YYYY-MM-DD'. */
export type DueAxis = { from: string; until: string; today: string }

export type DueRibbonProps = {
  /** Days by which 10, 50 and 90 of 100 such beds have failed, 'YYYY-MM-DD'; `late` may be unknown. */
  early: string
  middle: string
  late?: string | null
  axis: DueAxis
  height?: number
  /** Writes the three months under it. */
  dated?: boolean
}

const percent = (share: number) => `${(share * 100).toFixed(2)}%`

/** From early to late due date with its middle, on a shared axis with today marked. An end outside the axis is drawn open. */
export function DueRibbon({ early, middle, late, axis, height = 26, dated }: DueRibbonProps) {
  const display = useDisplay()
  const at = (day: string) => dayShare(day, axis.from, axis.until)
  const a = at(early)
  const m = at(middle)
  const b = late ? at(late) : { share: 1, outside: 'after' as const }
  const now = at(axis.today)
  const plot = useWords('plot')
  const months = { early: formatMonth(early, display), middle: formatMonth(middle, display) }
  const words = late ? plot('dueBetween', { ...months, late: formatMonth(late, display) }) : plot('dueFrom', months)
  const cy = height / 2
  const drawn = (
    <svg role="img" aria-label={words} width="100%" height={height} className="block min-w-24 overflow-visible">
      <title>{words}</title>
      <line x1="0" x2="100%" y1={cy} y2={cy} className="stroke-line" />
      <line x1={percent(now.share)} x2={percent(now.share)} y1="0" y2={height} className="stroke-ink" strokeDasharray="2 2" />
      <rect
        x={percent(a.share)}
        width={percent(Math.max(0.004, b.share - a.share))}
        y={cy - 5}
        height="10"
        className="fill-water"
        opacity=".28"
      />
      {a.outside === 'before' ? <OpenEnd x="0%" cy={cy} turn={-1} /> : null}
      {b.outside === 'after' ? <OpenEnd x="100%" cy={cy} turn={1} /> : null}
      {m.outside ? null : (
        <line x1={percent(m.share)} x2={percent(m.share)} y1={cy - 10} y2={cy + 10} className="stroke-water" strokeWidth="3" />
      )}
    </svg>
  )
  if (!dated) return drawn
  return (
    <span className="block min-w-0 grow">
      {drawn}
      <span aria-hidden="true" className="flex flex-wrap justify-between gap-x-2 text-small text-soft">
        <span>{formatMonth(early, display)}</span>
        <span className="font-semibold text-water">{formatMonth(middle, display)}</span>
        <span>{late ? formatMonth(late, display) : '…'}</span>
      </span>
    </span>
  )
}

function OpenEnd({ x, cy, turn }: { x: string; cy: number; turn: 1 | -1 }) {
  return (
    <svg x={x} y={cy - 5} width="1" height="10" overflow="visible" aria-hidden="true">
      <path d={`M${-9 * turn} 0 L${-2 * turn} 5 L${-9 * turn} 10`} className="fill-none stroke-water" strokeWidth="2" />
    </svg>
  )
}

/** The years of the shared axis, to stand in the head of the ribbons' column. */
export function DueAxisHead({ axis, most = 6 }: { axis: DueAxis; most?: number }) {
  const words = useWords('plot')
  const now = dayShare(axis.today, axis.from, axis.until).share
  const ticks = yearTicks(axis.from, axis.until, most).filter((t) => t.share <= 0.94 && Math.abs(t.share - now) > 0.09)
  return (
    <svg aria-hidden="true" width="100%" height="18" className="block min-w-24 overflow-visible">
      <text x={percent(now)} y="13" textAnchor={now < 0.06 ? 'start' : 'middle'} className="fill-ink">
        {words('today')}
      </text>
      {ticks.map((t) => (
        <text key={t.year} x={percent(t.share)} y="13" textAnchor={t.share < 0.04 ? 'start' : 'middle'} className="fill-soft">
          {t.year}
        </text>
      ))}
    </svg>
  )
}
