'use client'
import { countries, offeredLocales } from '@almanac/records/country'
import { papers, paperWords } from '@almanac/records/paper'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { TimeInput } from '@almanac/ui/time-input'
import { localeWords } from '@/client/locale-words'
import type { useFields } from '@/client/use-fields'

/** What the company's part of the form holds, as typed. */
export type CompanyTexts = Record<
  'name' | 'telephone' | 'country' | 'locale' | 'unitSystem' | 'timeZone' | 'currency' | 'paper' | 'dayStart' | 'dayEnd',
  string
>

type Props = {
  form: ReturnType<typeof useFields<CompanyTexts>>
  onCountry: (code: string) => void
  timeZones: readonly string[]
  currencies: readonly { value: string; label: string }[]
}

const UNITS = [
  { value: 'us', label: 'US: gallons, cubic feet, grains per gallon, °F' },
  { value: 'metric', label: 'Metric: liters, mg/L, °C' },
]

/** The company: name and telephone, how it writes, and when it works. The country fills in the rest, which stays open to change. */
export function CompanyFields({ form: { field, values }, onCountry, timeZones, currencies }: Props) {
  return (
    <fieldset className="flex flex-col gap-4">
      <legend className="mb-3 w-full border-t border-ink pt-3 text-h2 font-semibold">Your company</legend>
      <TextInput label="Company name" required maxLength={120} autoComplete="organization" {...field('name')} />
      <TextInput
        label="Telephone"
        type="tel"
        hint="Where customers call; on their pages and papers"
        maxLength={40}
        autoComplete="tel"
        {...field('telephone')}
      />
      <Select
        label="Country"
        hint="Fills in the next four fields"
        choices={[...countries.map(({ code, name }) => ({ value: code, label: name })), { value: '', label: 'Another country' }]}
        value={values.country}
        onChange={(event) => onCountry(event.target.value)}
      />
      <Select
        label="Numbers, days and clocks"
        choices={offeredLocales.map((value) => ({ value, label: localeWords(value) }))}
        {...field('locale')}
      />
      <Select label="Units" choices={UNITS} {...field('unitSystem')} />
      <Select label="Currency" choices={currencies} {...field('currency')} />
      <Select label="Paper" choices={papers.map((value) => ({ value, label: paperWords[value] }))} {...field('paper')} />
      <Select label="Time zone" choices={timeZones.map((value) => ({ value, label: value.replaceAll('_', ' ') }))} {...field('timeZone')} />
      <div className="grid gap-4 sm:grid-cols-2">
        <TimeInput label="Opens" required {...field('dayStart')} />
        <TimeInput label="Closes" required {...field('dayEnd')} />
      </div>
    </fieldset>
  )
}
