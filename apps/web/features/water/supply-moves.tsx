import type { SupplyPage } from '@almanac/contract/water'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import { formatInstant } from '@almanac/units/format-clock'
import { type NumberDisplay, showWhole, withUnit } from '@almanac/units/format-number'

const inWords = (days: number, display: NumberDisplay) => {
  const size = Math.abs(days)
  return size >= 300 ? withUnit(size / DAYS_PER_YEAR, 1, 'years', display) : withUnit(size / 7, 0, 'weeks', display)
}

/** What changes of this supply did to the middle days of its beds. */
export function SupplyMoves({ moves }: { moves: SupplyPage['moves'] }) {
  const display = useDisplay()
  return (
    <Section title="How changes moved the forecasts">
      {moves.length === 0 ? (
        <p className="text-soft">No change to this supply has moved a bed by two weeks or more yet.</p>
      ) : (
        <ul>
          {moves.map((move) => (
            <li key={move.runId} className="border-b border-line py-2">
              <span className="text-soft">{formatInstant(move.at, display)}</span> {showWhole(move.beds, display)}{' '}
              {move.beds === 1 ? 'bed' : 'beds'} moved, {showWhole(move.earlier, display)} of them earlier; on average{' '}
              {inWords(move.meanDays, display)} {move.meanDays < 0 ? 'earlier' : 'later'}.
            </li>
          ))}
        </ul>
      )}
    </Section>
  )
}
