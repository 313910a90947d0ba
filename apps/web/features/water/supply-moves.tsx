import type { SupplyPage } from '@almanac/contract/water'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import { formatInstant } from '@almanac/units/format-clock'
import { type NumberDisplay, showNumber, showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'

const lengthWords = (days: number, words: Words<'water'>, display: NumberDisplay) => {
  const size = Math.abs(days)
  return size >= 300
    ? words('years', { years: showNumber(size / DAYS_PER_YEAR, 1, display) ?? '' })
    : words('weeks', { weeks: showWhole(size / 7, display) })
}

/** What changes of this supply did to the middle days of its beds. */
export function SupplyMoves({ moves }: { moves: SupplyPage['moves'] }) {
  const display = useDisplay()
  const words = useWords('water')
  return (
    <Section title={words('moves')}>
      {moves.length === 0 ? (
        <p className="text-soft">{words('noMoves')}</p>
      ) : (
        <ul>
          {moves.map((move) => (
            <li key={move.runId} className="border-b border-line py-2">
              <span className="text-soft">{formatInstant(move.at, display)}</span>{' '}
              {words('moved', {
                ...{ count: move.beds, beds: showWhole(move.beds, display), earlier: showWhole(move.earlier, display) },
                ...{ length: lengthWords(move.meanDays, words, display), way: move.meanDays < 0 ? 'earlier' : 'later' },
              })}
            </li>
          ))}
        </ul>
      )}
    </Section>
  )
}
