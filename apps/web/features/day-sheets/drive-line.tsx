'use client'
import { useDisplay } from '@almanac/ui/display'
import { Shape } from '@almanac/ui/shape'
import { formatMiles } from '@almanac/units/distance'
import { formatDuration } from '@almanac/units/format-clock'
import { useSession } from '@/client/providers'
import type { SheetLine } from './sheet-lines.ts'
import { shortWords } from './sheet-trouble.ts'

/** A drive between two stops, a thin line: how long and how far, or that it is not known; in red where there is no time for it. */
export function DriveLine({ line }: { line: Extract<SheetLine, { kind: 'drive' }> }) {
  const display = useDisplay()
  const { me } = useSession()
  const { drive, to, short } = line
  const words =
    drive.minutes === null
      ? 'drive unknown'
      : drive.minutes === 0
        ? 'no drive'
        : `drive ${formatDuration(drive.minutes, display)}${drive.miles ? `, ${formatMiles(drive.miles, me.company)}` : ''}`
  return (
    <li className="grid grid-cols-[3.5rem_1fr] gap-x-3 text-small text-soft sm:grid-cols-[4rem_1fr]">
      <span />
      <span className="border-l-4 border-line px-3.5 py-0.5">
        {words} <span className="sr-only">to {to}</span>
        {short > 0 ? (
          <span className="text-danger">
            <Shape name="triangle" /> {shortWords(line, display)}
          </span>
        ) : null}
      </span>
    </li>
  )
}
