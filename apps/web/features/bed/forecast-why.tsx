'use client'
import type { BedExplanation, StoredForecast } from '@almanac/contract/beds'
import { useDisplay } from '@almanac/ui/display'
import { Why } from '@almanac/ui/why'
import { type DayDisplay, formatDay, formatMonth, formatMonths } from '@almanac/units/format-day'
import { type NumberDisplay, showNumber, showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'

type BedWords = Words<'bed'>

/** Where the life model's figures came from, in words. */
function fitWords(fit: Extract<BedExplanation, { ok: true }>['value']['fit'], display: DayDisplay, words: BedWords): string {
  if (!fit) return words('notFitted')
  if (fit.fellBackBecause) return words('fellBack')
  const [failures, records] = [showWhole(fit.failures, display), showWhole(fit.records, display)]
  return words('ownFit', { failures, records, day: formatDay(fit.asOfDay, display), version: fit.version })
}

const years = (value: number, display: NumberDisplay) => showNumber(value, 1, display) ?? ''

/** What the dates mean, counted in beds. */
const tenBeds = ({ chance12Months }: StoredForecast, display: NumberDisplay, words: BedWords) =>
  chance12Months === null
    ? words('nobodyKnows')
    : chance12Months < 0.05
      ? words('noneOfTen')
      : words('someOfTen', { count: showWhole(Math.max(1, chance12Months * 10), display) })

type Props = { forecast: StoredForecast; explained: Extract<BedExplanation, { ok: true }> | null }

/** The reasons behind the due dates: formula, inputs, water over time, assumptions, what is missing, sources. */
export function ForecastWhy({ forecast, explained }: Props) {
  const display = useDisplay()
  const words = useWords('bed')
  const value = explained?.value
  const water = value?.exposure.map((one) => ({
    key: `water-${one.fromDay}`,
    name: one.toDay
      ? words('waterIn', { months: formatMonths(one.fromDay, one.toDay, display) })
      : words('waterSince', { month: formatMonth(one.fromDay, display) }),
    value: one.why,
  }))
  const doubts = value?.weakness.byCause.map((one) => words(`doubt/${one.key}`, { years: years(one.years, display) }))
  const halfLast = value
    ? words('halfLast', {
        ...{ years: years(value.medianLifeYears, display), clean: years(value.medianCleanLifeYears, display) },
        day: formatDay(value.lastSeenDay, display),
      })
    : null
  const sharpest = value?.sharpest
  const narrowest = sharpest
    ? [words('narrowest', { years: years(sharpest.years, display), question: words(`question/${sharpest.key}`) })]
    : []
  return (
    <Why
      explanation={{
        title: words('whyDueThen'),
        summary: [tenBeds(forecast, display, words), halfLast].filter(Boolean).join(' '),
        inputs: value
          ? [
              { name: words('learnedFrom'), value: fitWords(value.fit, display, words) },
              ...value.explanation.inputs.map((one) => ({ name: one.name, value: one.value })),
              ...(water ?? []),
            ]
          : undefined,
        formula: value?.explanation.formula,
        assumptions: explained?.assumptions ?? forecast.assumptions,
        missing: [...forecast.missing, ...(doubts ?? []), ...narrowest],
        source: value
          ? words('sources', { sources: value.explanation.sources.join('; '), version: value.explanation.parametersVersion })
          : undefined,
      }}
    >
      {words('whyTheseDates')}
    </Why>
  )
}
