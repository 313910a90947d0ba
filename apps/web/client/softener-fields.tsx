'use client'
import type { NewSoftener } from '@almanac/contract/site-commands'
import { arrangements, arrangementWords } from '@almanac/records/arrangement'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { factSources, factSourceWords } from '@almanac/records/fact-source'
import { recordedResinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { DayInput } from '@almanac/ui/day-input'
import { NumberInput } from '@almanac/ui/number-input'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { parseQuantity } from '@almanac/units/parse-quantity'
import { BeganReading, TankReading } from './typed-readings.tsx'
import type { useFields } from './use-fields.ts'

export type SoftenerTexts = {
  softenerLabel: string
  location: string
  arrangement: string
  tankSize: string
  resinKind: string
  volume: string
  volumeUnit: string
  began: string
  lastSeenDay: string
  source: string
}

export const emptySoftener = (volumeUnit: 'ft3' | 'L'): SoftenerTexts => ({
  softenerLabel: '',
  location: '',
  arrangement: 'single',
  tankSize: '',
  resinKind: 'unknown',
  volume: '',
  volumeUnit,
  began: '',
  lastSeenDay: '',
  source: 'call',
})

/** What the form sends, or the sentence under the volume where it is no number. */
export function softenerOf(texts: SoftenerTexts): { softener: NewSoftener; volumeError?: undefined } | { volumeError: string } {
  const unit = texts.volumeUnit === 'L' ? 'L' : 'ft3'
  const typed = texts.volume.trim()
  const volume = typed === '' ? null : parseQuantity(`${typed} ${unit}`)
  if (volume && !volume.ok) return { volumeError: volume.reason }
  return {
    softener: {
      label: texts.softenerLabel,
      location: texts.location,
      arrangement: oneOf(arrangements, texts.arrangement) ?? 'single',
      tankSize: texts.tankSize,
      resinKind: oneOf(recordedResinKinds, texts.resinKind) ?? 'unknown',
      volume: volume && { value: volume.value, unit },
      began: texts.began,
      lastSeenDay: texts.lastSeenDay || null,
      source: oneOf(factSources, texts.source) ?? 'call',
    },
  }
}

type Props = {
  form: ReturnType<typeof useFields<SoftenerTexts>>
  volumeError?: string
  today: string
  dayOrder: 'month-first' | 'day-first'
}

/** A softener with its tank and bed, as far as it is known; each written value shows at once how it is read. */
export function SoftenerFields({ form, volumeError, today, dayOrder }: Props) {
  const { field, values, set } = form
  return (
    <>
      <TextInput label="Tank" hint="As on the label: 10x54, 48,000 grain, 42 L, twin 14x65" {...field('tankSize')} />
      <TankReading text={values.tankSize} />
      <TextInput label="When the resin went in" hint="As they say it: 2014, before 2015, Mar 2012, 3/14/2018" {...field('began')} />
      <BeganReading text={values.began} today={today} dayOrder={dayOrder} />
      <Select label="Resin" choices={choicesOf(recordedResinKinds, resinKindWords)} {...field('resinKind')} />
      <NumberInput
        label="Resin volume"
        unit={['ft3', 'L']}
        chosenUnit={values.volumeUnit}
        onUnit={(volumeUnit) => set({ volumeUnit })}
        error={volumeError}
        {...field('volume')}
      />
      <DayInput label="Last known to work" hint="Today, if they have soft water now" max={today} {...field('lastSeenDay')} />
      <Select label="Tanks" choices={choicesOf(arrangements, arrangementWords)} {...field('arrangement')} />
      <TextInput label="Where it stands" hint="Cellar, garage, outside under a lid" {...field('location')} />
      <Select label="Where these facts are from" choices={choicesOf(factSources, factSourceWords)} {...field('source')} />
    </>
  )
}
