import type { ClueId, TankClues } from '@almanac/softener/identify/clue-types'
import { type ClueSpeaking, clueValue } from '@almanac/softener/identify/clue-words'
import type { TankIdentity } from '@almanac/softener/identify/identify-tank'
import { Why } from '@almanac/ui/why'
import type { Ok } from '@almanac/units/result'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import { useChance } from '@/client/use-chance'

/** Whether the doubt matters, and how the shares come about. */
export function HowSure({ found, clues }: { found: Ok<TankIdentity>; clues: TankClues }) {
  const display = useSession().me.company
  const words = useWords('whichTank')
  const chance = useChance()
  const { candidates, kitsDiffer, next, usedClues } = found.value
  const ask = next[0]
  const matters = candidates.length < 2 ? '' : words(kitsDiffer ? 'differ' : 'alike')
  return (
    <p className="mb-3">
      {matters}{' '}
      <Why
        explanation={{
          title: words('why'),
          summary: ask
            ? words('nextBrings', { title: words(`ask/${ask.id}`), chance: chance(ask.likeliestAfter), how: words(`ask/${ask.id}/how`) })
            : words('noQuestion'),
          inputs: usedClues.map((clue) => ({
            key: clue,
            name: words(`clue/${clue}`),
            value: shown(clue, clues, { display, tank: words }),
          })),
          formula: words('formula'),
          assumptions: found.assumptions,
          missing: found.missing,
          source: found.sources.join('; '),
        }}
      >
        {words('why')}
      </Why>
    </p>
  )
}

function shown(clue: ClueId, clues: TankClues, speaking: ClueSpeaking): string {
  if (clue === 'jacket') return speaking.tank(clues.jacket ? 'yes' : 'no')
  return clueValue(clue, clues[clue] ?? Number.NaN, speaking)
}
