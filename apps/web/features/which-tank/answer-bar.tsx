import type { TankIdentity } from '@almanac/softener/identify/identify-tank'
import { StatusWord } from '@almanac/ui/status-word'
import { useWords } from '@almanac/words/use-words'
import { useChance } from '@/client/use-chance'
import { FIELD_OF_ASK, sureKey } from './size-words.ts'

type Props = { identity: TankIdentity; known: boolean; onAsk: (field: string) => void }

/** The answer as it stands and what to ask next; stays in sight while one types. */
export function AnswerBar({ identity, known, onAsk }: Props) {
  const words = useWords('whichTank')
  const chance = useChance()
  const best = identity.candidates[0]
  const next = identity.next[0]
  const second = identity.candidates[1]
  const near = best && second && best.chance < 0.75 && second.chance > 0.5 * best.chance
  return (
    <div className="sticky top-0 z-10 -mx-4 mb-5 border-b border-ink bg-paper px-4 py-3 sm:mx-0 sm:px-0">
      <output className="block">
        {known && best ? (
          <span className="flex flex-wrap items-baseline justify-between gap-x-4">
            <strong className="text-h2 font-semibold">
              {near ? words('either', { first: best.label, second: second.label }) : best.label}
            </strong>
            <StatusWord
              shape={identity.settled ? 'tick' : best.chance >= 0.5 ? 'half' : 'hollow'}
              tone={identity.settled ? 'done' : 'soft'}
            >
              {near || identity.slip ? words('open') : words('sureAt', { sure: words(sureKey(best.chance)), chance: chance(best.chance) })}
            </StatusWord>
          </span>
        ) : (
          <strong className="text-h2 font-semibold">{words('nothingKnown')}</strong>
        )}
      </output>
      {identity.slip ? <p className="mt-1 font-medium">{identity.slip}</p> : null}
      {next ? (
        <a
          href={`#${FIELD_OF_ASK[next.id]}`}
          onClick={(event) => {
            event.preventDefault()
            onAsk(FIELD_OF_ASK[next.id])
          }}
          className="mt-2 flex min-h-control items-center border border-ink px-3.5 py-1 hover:bg-wash"
        >
          <span>
            {words.rich('nextAsk', {
              title: words(`ask/${next.id}`),
              ask: (title) => <strong className="font-semibold">{title}</strong>,
            })}
          </span>
        </a>
      ) : known ? (
        <p className="mt-1 text-soft">{words(identity.settled ? 'noMoreMeasuring' : 'nothingToAsk')}</p>
      ) : null}
    </div>
  )
}
