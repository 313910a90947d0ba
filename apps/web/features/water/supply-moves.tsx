import type { SupplyPage } from '@almanac/contract/water'
import { Section } from '@almanac/ui/section'
import { useSession } from '@/client/providers'

const inWords = (days: number) => {
  const size = Math.abs(days)
  return size >= 300 ? `${(size / 365.25).toFixed(1)} years` : `${Math.round(size / 7)} weeks`
}

/** What changes of this supply did to the middle days of its beds. */
export function SupplyMoves({ moves }: { moves: SupplyPage['moves'] }) {
  const { me } = useSession()
  return (
    <Section title="What changes did to the forecasts">
      {moves.length === 0 ? (
        <p className="text-soft">No change of this supply has moved a bed by two weeks or more yet.</p>
      ) : (
        <ul>
          {moves.map((move) => (
            <li key={move.runId} className="border-b border-line py-2">
              <span className="text-soft">
                {new Date(move.at).toLocaleString('en-US', { timeZone: me.company.timeZone, dateStyle: 'medium', timeStyle: 'short' })}
              </span>{' '}
              {move.beds.toLocaleString('en-US')} {move.beds === 1 ? 'bed' : 'beds'} moved, {move.earlier.toLocaleString('en-US')} of them
              earlier; on average {inWords(move.meanDays)} {move.meanDays < 0 ? 'earlier' : 'later'}.
            </li>
          ))}
        </ul>
      )}
    </Section>
  )
}
