import type { RankedCause, Triage } from '@almanac/softener/diagnosis/triage'
import { Why } from '@almanac/ui/why'
import { formatChance, formatPercent, type NumberDisplay } from '@almanac/units/format-number'
import type { Ok } from '@almanac/units/result'
import { useSession } from '@/client/providers'

function chanceWords(chance: number): string {
  if (chance >= 0.85) return 'very likely'
  if (chance >= 0.5) return 'likely'
  if (chance >= 0.2) return 'possible'
  return chance >= 0.05 ? 'less likely' : 'unlikely'
}

/** Causes, likeliest first; each can be asked what speaks for and against it. */
export function CauseBars({ found }: { found: Ok<Triage> }) {
  const display = useSession().me.company
  return (
    <ol className="border-t border-line">
      {found.value.causes.map((one) => (
        <li key={one.cause.id} className="border-b border-line py-2.5">
          <p className="flex flex-wrap items-baseline justify-between gap-x-4">
            <Why explanation={explain(one, found, display)}>
              <span className={one.chance >= 0.2 ? 'font-semibold' : ''}>{one.cause.label}</span>
            </Why>
            <span className="text-soft">
              {chanceWords(one.chance)}, <span className="text-ink">{formatChance(one.chance, display)}</span>
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

function explain({ cause, chance, priorChance, contributions }: RankedCause, { assumptions, sources }: Ok<Triage>, display: NumberDisplay) {
  return {
    title: `${cause.label}: ${formatChance(chance, display)}`,
    summary: `${cause.meaning} ${cause.cureText}`,
    inputs: [
      { key: 'before', name: 'Before any check', value: formatChance(priorChance, display), from: cause.source },
      ...contributions.map((one) => ({
        key: one.title,
        name: one.title,
        value: `${one.answer}: ${one.words}`,
        from: `${one.reason} (${one.source})`,
      })),
    ],
    formula: `The chance before any check, times how far each answer points to or away from it, in the order asked, so that all causes add up to ${formatPercent(1, display)} (Bayes).`,
    assumptions,
    source: sources.join('; '),
  }
}
