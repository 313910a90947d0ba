'use client'
import type { NewSoftener } from '@almanac/contract/site-commands'
import { arrangements, arrangementWords } from '@almanac/records/arrangement'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { factSources, factSourceWords } from '@almanac/records/fact-source'
import { recordedResinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { judgeInTank } from '@almanac/service-rules/amounts/judge-in-tank'
import { DayInput } from '@almanac/ui/day-input'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { AmountField } from './amount-field.tsx'
import { enteredIn } from './amounts.ts'
import { useSession } from './providers.tsx'
import { tankRoomOf } from './tank-room.ts'
import { BeganReading, TankReading } from './typed-readings.tsx'
import { useAmounts } from './use-amounts.ts'
import { useFields } from './use-fields.ts'

type SoftenerTexts = {
  softenerLabel: string
  location: string
  arrangement: string
  tankSize: string
  resinKind: string
  began: string
  lastSeenDay: string
  source: string
}

const emptySoftener = (): SoftenerTexts => ({
  softenerLabel: '',
  location: '',
  arrangement: 'single',
  tankSize: '',
  resinKind: 'unknown',
  began: '',
  lastSeenDay: '',
  source: 'call',
})

/** A softener being typed. `read` gives what is sent, or null while its resin cannot be: the field then says why. */
export function useSoftener() {
  const { company } = useSession().me
  const form = useFields(emptySoftener)
  const texts = form.values
  const room = tankRoomOf(texts.tankSize, company)
  const judge = room ? (value: number, unit: string) => judgeInTank('resin', value, unit, room) : undefined
  const amounts = useAmounts({ volume: 'resin' }, { judges: { volume: judge } })
  const read = (): NewSoftener | null => {
    const found = amounts.read()
    if (found === null) return null
    return {
      label: texts.softenerLabel,
      location: texts.location,
      arrangement: oneOf(arrangements, texts.arrangement) ?? 'single',
      tankSize: texts.tankSize,
      resinKind: oneOf(recordedResinKinds, texts.resinKind) ?? 'unknown',
      volume: enteredIn(found.volume, ['ft3', 'L']) ?? null,
      volumeWhy: found.volume?.why ?? undefined,
      began: texts.began,
      lastSeenDay: texts.lastSeenDay || null,
      source: oneOf(factSources, texts.source) ?? 'call',
    }
  }
  return { form, amounts, read }
}

type Props = { softener: ReturnType<typeof useSoftener>; today: string; dayOrder: 'month-first' | 'day-first' }

/** A softener with its tank and bed, as far as it is known; each written value shows at once how it is read. */
export function SoftenerFields({ softener, today, dayOrder }: Props) {
  const { field, values } = softener.form
  return (
    <>
      <TextInput label="Tank" hint="As on the label: 10x54, 48,000 grain, 42 L, twin 14x65" {...field('tankSize')} />
      <TankReading text={values.tankSize} />
      <TextInput label="When the resin went in" hint="In their words: 2014, before 2015, Mar 2012, 3/14/2018" {...field('began')} />
      <BeganReading text={values.began} today={today} dayOrder={dayOrder} />
      <Select label="Resin" choices={choicesOf(recordedResinKinds, resinKindWords)} {...field('resinKind')} />
      <AmountField label="Resin volume" {...softener.amounts.field('volume')} />
      <DayInput label="Last known working" hint="Today, if they have soft water now" max={today} {...field('lastSeenDay')} />
      <Select label="Tanks" choices={choicesOf(arrangements, arrangementWords)} {...field('arrangement')} />
      <TextInput label="Where it is" hint="Basement, garage, outdoors" {...field('location')} />
      <Select label="How you know" choices={choicesOf(factSources, factSourceWords)} {...field('source')} />
    </>
  )
}
