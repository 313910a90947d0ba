import type { RankedCause, Triage } from '@almanac/softener/diagnosis/triage'
import { Why } from '@almanac/ui/why'
import { formatPercent } from '@almanac/units/format-number'
import type { Ok } from '@almanac/units/result'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import { useChance } from '@/client/use-chance'

/** How likely a chance is called. */
function likeliness(chance: number) {
  if (chance >= 0.85) return 'chance/very-likely'
  if (chance >= 0.5) return 'chance/likely'
  if (chance >= 0.2) return 'chance/possible'
  return chance >= 0.05 ? 'chance/less-likely' : 'chance/unlikely'
}

/** Causes, likeliest first; each can be asked what speaks for and against it. */
export function CauseBars({ found }: { found: Ok<Triage> }) {
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  const chance = useChance()
  const explain = useExplanation(found)
  return (
    <ol className="border-t border-line">
      {found.value.causes.map((one) => (
        <li key={one.cause.id} className="border-b border-line py-2.5">
          <p className="flex flex-wrap items-baseline justify-between gap-x-4">
            <Why explanation={explain(one)}>
              <span className={one.chance >= 0.2 ? 'font-semibold' : ''}>{said(one.cause.id)}</span>
            </Why>
            <span className="text-soft">
              {words(likeliness(one.chance))}, <span className="text-ink">{chance(one.chance)}</span>
            </span>
          </p>
          <span aria-hidden="true" className="mt-1 block h-2 bg-wash">
            <span className="block h-2 min-w-px bg-water" style={{ width: `${one.chance * 100}%` }} />
          </span>
        </li>
      ))}
    </ol>
  )
}

function useExplanation({ assumptions, sources }: Ok<Triage>) {
  const display = useSession().me.company
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  const shown = useChance()
  return ({ cause, chance, priorChance, contributions }: RankedCause) => ({
    title: `${said(cause.id)}: ${shown(chance)}`,
    summary: `${said(`${cause.id}/means`)} ${said(`${cause.id}/cure`)}`,
    inputs: [
      { key: 'before', name: words('beforeChecks'), value: shown(priorChance), from: said(cause.source) },
      ...contributions.map((one) => ({
        key: one.check,
        name: said(`check/${one.check}`),
        value: words('answered', { answer: one.answer, points: one.words }),
        from: words('given', { why: said(`check/${one.check}/why`), source: said(one.source) }),
      })),
    ],
    formula: words('formula', { whole: formatPercent(1, display) }),
    assumptions,
    source: sources.join('; '),
  })
}
