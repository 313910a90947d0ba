import currencyData from 'cldr-core/supplemental/currencyData.json' with { type: 'json' }
import measurementData from 'cldr-core/supplemental/measurementData.json' with { type: 'json' }
import { expect, test } from 'vitest'
import { countries } from './country.ts'

type Dated = Record<string, { _from?: string; _to?: string; _tender?: string }>
const { region } = currencyData.supplemental.currencyData as unknown as { region: Record<string, Dated[]> }
const measures = measurementData.supplemental.measurementData as {
  measurementSystem: Record<string, string>
  paperSize: Record<string, string>
}

/** What is paid with today, by Unicode CLDR 48.2. */
const currencyOf = (code: string) =>
  (region[code] ?? [])
    .flatMap((one) => Object.entries(one).filter(([, { _to, _tender }]) => !_to && _tender !== 'false'))
    .map(([name]) => name)

test.each(countries.map((one) => [one.name, one] as const))('%s pays, measures and prints as CLDR says', (_, country) => {
  const { code, currency, unitSystem, paper, locale } = country
  expect(currencyOf(code)).toEqual([currency])
  // CLDR's "UK" is metric with pints and miles on the road.
  expect(unitSystem).toBe((measures.measurementSystem[code] ?? 'metric') === 'US' ? 'us' : 'metric')
  expect(paper).toBe(measures.paperSize[code] === 'US-Letter' ? 'letter' : 'a4')
  expect(new Intl.Locale(locale).region).toBe(code)
})
