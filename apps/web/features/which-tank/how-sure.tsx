import { CLUE_LIMITS } from '@almanac/softener/identify/check-clues'
import type { ClueId, TankClues } from '@almanac/softener/identify/clue-types'
import type { TankIdentity } from '@almanac/softener/identify/identify-tank'
import { Why } from '@almanac/ui/why'
import type { AmountDisplay } from '@almanac/units/display'
import { formatLengthIn, formatVolumeFt3 } from '@almanac/units/format'
import { formatChance, withUnit } from '@almanac/units/format-number'
import type { Ok } from '@almanac/units/result'
import { useSession } from '@/client/providers'

/** Whether the doubt matters, and how the shares come about. */
export function HowSure({ found, clues }: { found: Ok<TankIdentity>; clues: TankClues }) {
  const display = useSession().me.company
  const { candidates, kitsDiffer, next, usedClues } = found.value
  const ask = next[0]
  const matters =
    candidates.length < 2 ? '' : kitsDiffer ? 'They take different kits: measure once more.' : 'Whichever it is, kit and crew are the same.'
  return (
    <p className="mb-3">
      {matters}{' '}
      <Why
        explanation={{
          title: 'How we got these chances',
          summary: ask
            ? `Next, ${ask.title}: that should bring the likeliest size to about ${formatChance(ask.likeliestAfter, display)}. ${ask.how}`
            : 'No other question from here would tell us more.',
          inputs: usedClues.map((clue) => ({ key: clue, name: name(clue), value: shown(clue, clues, display) })),
          formula:
            'The share of each size among tanks, times how well each clue fits it, over all sizes (Bayes). A clue fits by a normal error, with a few in a hundred taken as slips; sizes outside the table are tried by the half inch.',
          assumptions: found.assumptions,
          missing: found.missing,
          source: found.sources.join('; '),
        }}
      >
        How we got these chances
      </Why>
    </p>
  )
}

function name(clue: ClueId): string {
  if (clue === 'jacket') return 'sleeve'
  return CLUE_LIMITS[clue].name
}

function shown(clue: ClueId, clues: TankClues, display: AmountDisplay): string {
  const value = clues[clue]
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (clue === 'nominalGrains') return withUnit(value ?? 0, 0, 'grains', display)
  return clue === 'resinFt3' ? formatVolumeFt3(value ?? null, display) : formatLengthIn(value ?? null, display)
}
