'use client'
import { useDisplay } from '@almanac/ui/display'
import { Shape } from '@almanac/ui/shape'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import type { SheetLine } from './sheet-lines.ts'

/** A break where it lies: told in red where visits and drives leave no room for it. */
export function BreakLine({ line }: { line: Extract<SheetLine, { kind: 'break' }> }) {
  const display = useDisplay()
  const words = `break ${formatDuration((line.endsAt - line.at) / 60_000, display)}`
  return (
    <li className="grid grid-cols-[3.5rem_1fr] gap-x-3 text-small text-soft sm:grid-cols-[4rem_1fr]">
      <span className="text-right text-base tabular-nums">{line.fits ? formatClock(line.at, display) : ''}</span>
      <span className="border-l-4 border-line px-3.5 py-0.5">
        {line.fits ? (
          words
        ) : (
          <span className="text-danger">
            <Shape name="triangle" /> no time for the {words}
          </span>
        )}
      </span>
    </li>
  )
}
