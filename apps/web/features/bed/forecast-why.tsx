'use client'
import type { BedExplanation, StoredForecast } from '@almanac/contract/beds'
import { type QuestionKey, questionWords } from '@almanac/records/forecast-question'
import { useDisplay } from '@almanac/ui/display'
import { Why } from '@almanac/ui/why'
import { formatDay, formatMonth, formatMonths } from '@almanac/units/format-day'
import { type NumberDisplay, showWhole, withUnit } from '@almanac/units/format-number'

const DOUBTS: Record<QuestionKey, string> = {
  beginning: 'when it went in',
  'water-test': 'what reaches the softener',
  disinfectant: 'the disinfectant',
  'last-seen': 'whether it still works',
  crosslink: 'the resin',
  iron: 'iron in the water',
  inspection: 'what the resin can still hold',
}
/** Where the life model's figures came from, in words. */
function fitWords(fit: Extract<BedExplanation, { ok: true }>['value']['fit'], display: NumberDisplay): string {
  if (!fit) return 'industry rules of thumb; your own records have not been fitted yet'
  if (fit.fellBackBecause) return `industry rules of thumb. ${fit.fellBackBecause}`
  return `${showWhole(fit.failures, display)} failures among ${showWhole(fit.records, display)} of your own beds, learned ${formatDay(fit.asOfDay, display)} (${fit.version})`
}

const years = (value: number, display: NumberDisplay) => withUnit(value, 1, 'years', display)

/** What the dates mean, counted in beds. */
const tenBeds = ({ chance12Months }: StoredForecast, display: NumberDisplay) =>
  chance12Months === null
    ? 'Nobody can say yet when beds like this one fail. '
    : chance12Months < 0.05
      ? 'Of ten beds like this one, probably none will fail within a year. '
      : `Of ten beds like this one, about ${showWhole(Math.max(1, chance12Months * 10), display)} will fail within a year. `

const sharpestWords = ({ key, years: taken }: { key: QuestionKey; years: number }, display: NumberDisplay) =>
  `Best way to narrow it, by about ${years(taken, display)}: ${questionWords[key]}`

type Props = { forecast: StoredForecast; explained: Extract<BedExplanation, { ok: true }> | null }

/** The reasons behind the due dates: formula, inputs, water over time, assumptions, what is missing, sources. */
export function ForecastWhy({ forecast, explained }: Props) {
  const display = useDisplay()
  const value = explained?.value
  const water = value?.exposure.map((one) => ({
    key: `water-${one.fromDay}`,
    name: `Water ${one.toDay ? formatMonths(one.fromDay, one.toDay, display) : `since ${formatMonth(one.fromDay, display)}`}`,
    value: one.why,
  }))
  const doubts = value?.weakness.byCause.map((one) => `${DOUBTS[one.key]}: leaves ${years(one.years, display)} of doubt`)
  return (
    <Why
      explanation={{
        title: 'Why it’s due then',
        summary: value
          ? `${tenBeds(forecast, display)}Half of beds like this last ${years(value.medianLifeYears, display)} on this water; on clean water, ${years(value.medianCleanLifeYears, display)}. This one was last seen working ${formatDay(value.lastSeenDay, display)}.`
          : tenBeds(forecast, display),
        inputs: value
          ? [
              { name: 'Learned from', value: fitWords(value.fit, display) },
              ...value.explanation.inputs.map((one) => ({ name: one.name, value: one.value })),
              ...(water ?? []),
            ]
          : undefined,
        formula: value?.explanation.formula,
        assumptions: explained?.assumptions ?? forecast.assumptions,
        missing: [...forecast.missing, ...(doubts ?? []), ...(value?.sharpest ? [sharpestWords(value.sharpest, display)] : [])],
        source: value ? `${value.explanation.sources.join('; ')}. Parameters ${value.explanation.parametersVersion}.` : undefined,
      }}
    >
      Why these dates
    </Why>
  )
}
