import type { BedChoice } from '@almanac/contract/bed-choice'
import { eachResinKind, shortResinKindWords } from '@almanac/records/resin-kind'
import { NO_REBED_PRICE, type WhichResin, whichResin } from '@almanac/softener/choice/which-resin'
import { GALLONS_PER_HOUSEHOLD_DAY, GALLONS_PER_PERSON_DAY } from '@almanac/softener/choice/yearly-running'
import { compareKits } from '@almanac/softener/kit/compare-kits'
import { storesForKit } from '@almanac/softener/kit/stores-for-kit'
import { kitInputOf } from '@almanac/softener/rebed/rebed-of-record'
import { CostSpans } from '@almanac/ui/cost-spans'
import { Notice } from '@almanac/ui/notice'
import { Section } from '@almanac/ui/section'
import { Why } from '@almanac/ui/why'
import { formatWeightLb } from '@almanac/units/format'
import { formatWholeMoney, type MoneyDisplay } from '@almanac/units/money'
import { useWords } from '@almanac/words/use-words'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { oftenWords, spreadYears } from './choice-words.ts'
import { KitsTable } from './kits-table.tsx'

type Props = { choice: BedChoice; rebedMinor: number | null }

/** Which resin: the cost a year of each at this water over the lives a bed may have, and the kits side by side. */
export function ResinPart({ choice, rebedMinor }: Props) {
  const firm = useRebedFirm()
  const { me, figures } = useSession()
  const [card, why] = [useWords('card'), useWords('cardWhy')]
  const { currency } = me.company
  const display = me.company
  const { shelf, prices } = storesForKit(choice.plan.stores)
  const kits = compareKits(kitInputOf(choice.plan.bed, firm), { currency, prices }, shelf)
  const people = choice.plan.softener?.peopleServed ?? null
  const more = (kind: string) => (kits.ok ? (kits.value.find((one) => one.kind === kind)?.moreMinor ?? null) : null)
  const result =
    choice.lives === null
      ? null
      : whichResin({
          hardnessGpg: choice.plan.water.hardnessGpg,
          ironMgL: choice.plan.water.ironMgL,
          gallonsPerDay: people === null ? GALLONS_PER_HOUSEHOLD_DAY : people * GALLONS_PER_PERSON_DAY,
          figures,
          speaking: { card, why },
          livesYears: choice.lives.newBedYears,
          longerTen: choice.lives.longerTen,
          rebedMinor,
          kitMoreMinor: eachResinKind((kind) => (kind === 'gel-8' ? 0 : more(kind))),
        })
  return (
    <Section title="Which resin?">
      {result === null ? <Notice kind="mind">{choice.refusal ?? 'We can’t say how long this bed lasts.'}</Notice> : null}
      {result && !result.ok ? <Notice kind="mind">{result.reason}</Notice> : null}
      {result?.ok ? (
        <>
          <p className="max-w-[75ch]">
            <Answer found={result.value} display={display} />{' '}
            <Why
              explanation={{
                title: 'How the yearly cost is calculated',
                summary:
                  'This spreads the cost of a rebed over the years its bed may last, and adds a year of salt and water. 10% lasts longer; nobody knows exactly how much, and the bars show that.',
                inputs: [
                  {
                    name: 'Lives of a new bed, 8%',
                    value: spreadYears(result.value.options[0]?.livesYears ?? { low: 0, middle: 0, high: 0, mean: 0 }),
                  },
                  {
                    name: 'Lives, 10%',
                    value: spreadYears(result.value.options[1]?.livesYears ?? { low: 0, middle: 0, high: 0, mean: 0 }),
                  },
                  { name: 'Rebed with 8%', value: rebedMinor === null ? null : formatWholeMoney(rebedMinor, display) },
                  ...result.value.options.map((one) => ({
                    name: `Salt a year, ${shortResinKindWords[one.key]}`,
                    value: one.running ? formatWeightLb(one.running.saltLb, display) : null,
                  })),
                ],
                formula: 'cost a year = rebed ÷ life + salt a year × its price + water a year × its price',
                assumptions: [...result.assumptions, ...(choice.lives?.assumptions ?? [])],
                missing: result.missing,
                source: [...new Set(result.sources)].join('; '),
              }}
            >
              How it’s calculated
            </Why>
          </p>
          <CostSpans
            title="Cost a year by resin"
            money={(minor) => formatWholeMoney(minor, display)}
            rows={result.value.options.map((one) => ({
              name: shortResinKindWords[one.key],
              spread: one.perYear,
              cheapest: one.chanceCheapest === null ? '' : oftenWords(one.chanceCheapest),
              missing: one.unpriced,
              best: one.key === result.value.cheapest,
            }))}
          />
          {result.missing.length > 0 ? <p className="text-small text-soft">Left out: {result.missing.join('; ')}.</p> : null}
        </>
      ) : null}
      <h3 className="mt-5 mb-1 font-semibold">The kit with each resin</h3>
      {kits.ok ? <KitsTable kits={kits.value} display={display} /> : <p className="text-soft">{kits.reason}</p>}
    </Section>
  )
}

function Answer({ found, display }: { found: WhichResin; display: MoneyDisplay }) {
  const best = found.options.find((one) => one.key === found.cheapest)
  if (!best?.perYear) {
    const one = found.options.find((option) => option.perYear !== null)
    if (one?.perYear)
      return `Only ${shortResinKindWords[one.key]} has a price: about ${formatWholeMoney(one.perYear.middle, display)} a year.`
    return `No yearly cost yet: ${NO_REBED_PRICE} is missing.`
  }
  const name = shortResinKindWords[best.key]
  const sure = (best.chanceCheapest ?? 0) >= 0.8
  return `${name} costs least on this water: about ${formatWholeMoney(best.perYear.middle, display)} a year; it is the cheapest ${oftenWords(best.chanceCheapest ?? 0)}${sure ? '' : ', so it isn’t certain'}.`
}
