import type { BedChoice } from '@almanac/contract/bed-choice'
import { rebedCleanReplace, type Way } from '@almanac/softener/choice/rebed-clean-replace'
import { CostSpans } from '@almanac/ui/cost-spans'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { Why } from '@almanac/ui/why'
import { yearsSince } from '@almanac/units/calendar/calendar-day'
import { formatWholeMoney } from '@almanac/units/money'
import { AmountField } from '@/client/amount-field'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { oftenWords } from './choice-words.ts'
import type { WhatIf } from './use-what-if.ts'

const NAMES: Record<Way, string> = { rebed: 'Rebed', clean: 'Clean, rebed later', replace: 'Replace the unit' }

type Props = { choice: BedChoice; rebedMinor: number | null; prices: WhatIf }

/** Rebed, clean or replace: the cost a year of each, over what bed and unit may still last. */
export function WayPart({ choice, rebedMinor, prices }: Props) {
  const { me } = useSession()
  const today = useToday()
  const display = me.company
  const { plan, lives } = choice
  const installed = plan.softener?.installedLatest ?? plan.softener?.installedEarliest ?? null
  const unitAgeYears = yearsSince(installed, installed, today)
  const result =
    lives === null
      ? null
      : rebedCleanReplace({
          livesYears: lives.newBedYears,
          rebedMinor,
          cleanMinor: prices.clean.minor,
          unitMinor: prices.unit.minor,
          unitAgeYears,
          ironMgL: plan.water.ironMgL,
          beads: plan.beads,
        })
  const best = result?.ok ? result.value.options.find((one) => one.key === result.value.cheapest) : null
  return (
    <Section title="Rebed, clean, or replace the unit?">
      <div className="mb-3 flex flex-wrap gap-x-6 gap-y-3">
        <AmountField label="A cleaning costs" {...prices.clean.field} />
        <AmountField label="A new unit, installed, costs" {...prices.unit.field} />
      </div>
      {result === null ? <Notice kind="mind">{choice.refusal ?? 'We can’t say how long this bed lasts.'}</Notice> : null}
      {result && !result.ok ? <Notice kind="mind">{result.reason}</Notice> : null}
      {result?.ok ? (
        <>
          <p className="max-w-[75ch]">
            {best?.perYear
              ? `${NAMES[best.key]} costs least, about ${formatWholeMoney(best.perYear.middle, display)} a year; and it’s the cheapest ${oftenWords(best.chanceCheapest ?? 0)}.`
              : 'We compare them once two have a price.'}{' '}
            {result.value.ironMayBeTheFault
              ? 'Iron may be the cause here, so try a cleaning first.'
              : 'Nothing points to iron, and a cleaning doesn’t repair chlorine damage.'}{' '}
            <Why
              explanation={{
                title: 'How the three are compared',
                summary:
                  'A rebed lasts as long as the new bed or the unit, whichever ends first. A cleaning delays the rebed by the years it gains. A new unit costs its price and the beds it will need over its life.',
                inputs: [
                  { name: 'Age of the unit', value: unitAgeYears === null ? null : `${Math.round(unitAgeYears)} years` },
                  { name: 'Iron', value: plan.water.ironMgL === null ? null : `${plan.water.ironMgL} mg/L` },
                  { name: 'Beads, last seen', value: plan.beads },
                  { name: 'Rebed', value: rebedMinor === null ? null : formatWholeMoney(rebedMinor, display) },
                ],
                assumptions: [...result.assumptions, ...(lives?.assumptions ?? [])],
                missing: result.missing,
                source: result.sources.join('; '),
              }}
            >
              How it’s calculated
            </Why>
          </p>
          <CostSpans
            title="Cost a year of each way"
            money={(minor) => formatWholeMoney(minor, display)}
            rows={result.value.options.map((one) => ({
              name: NAMES[one.key],
              spread: one.perYear,
              cheapest: one.chanceCheapest === null ? '' : oftenWords(one.chanceCheapest),
              missing: one.unpriced,
              best: one.key === result.value.cheapest,
            }))}
          />
          <p className="max-w-[75ch] text-small text-soft">
            A cracked tank, or a valve with no parts available, decides it: replace the unit.
          </p>
        </>
      ) : null}
    </Section>
  )
}
