import type { VisitPage } from '@almanac/contract/visits'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { twinName } from '@almanac/softener/tanks/twin-name'
import { Why } from '@almanac/ui/why'
import { formatWeightLb } from '@almanac/units/format'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** "Kit", and of a twin for which tank. */
export function useKitTitle({ twin }: VisitPage): string {
  const firm = useRebedFirm()
  const words = useWords('visit')
  return twin ? words('kitFor', { tank: twinName(twin, firm) }) : words('kit')
}

/** What to carry in, line by line; each line can be asked why. */
export function VisitKit({ visit }: { visit: VisitPage }) {
  const firm = useRebedFirm()
  const { me } = useSession()
  const words = useWords('visit')
  const kit = visit.bed ? kitOf(visit.bed, firm) : null
  if (!kit) return null
  if (!kit.ok) return <p>{kit.reason}</p>
  const { lines, loadWeightLb, heaviestLift, heaviestLiftLb, warnings } = kit.value
  return (
    <>
      <ul className="border-t border-line">
        {lines.map((line) => (
          <li key={`${line.item}-${line.text}`} className="flex min-h-control items-center justify-between gap-4 border-b border-line py-2">
            <Why
              explanation={{
                title: line.label,
                summary: line.why,
                assumptions: kit.assumptions,
                missing: kit.missing,
                source: line.source,
              }}
            >
              {line.text}
            </Why>
            <span className="shrink-0 whitespace-nowrap text-soft">
              {line.weightLb ? formatWeightLb(line.weightLb, me.company) : line.toReturn ? words('bringBack') : ''}
            </span>
          </li>
        ))}
      </ul>
      <p className="mt-3">
        {words('carryIn', {
          weight: formatWeightLb(loadWeightLb, me.company),
          lift: heaviestLift,
          liftWeight: formatWeightLb(heaviestLiftLb, me.company),
        })}
      </p>
      {warnings.map((warning) => (
        <p key={warning} className="mt-1 font-medium">
          {warning}
        </p>
      ))}
    </>
  )
}
