'use client'
import type { BedPage } from '@almanac/contract/beds'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { factSources, factSourceWords } from '@almanac/records/fact-source'
import { type RecordedResinKind, recordedResinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { DayInput } from '@almanac/ui/day-input'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { reasonsOf } from '@/client/amounts'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { tankRoomOf } from '@/client/tank-room'
import { BeganReading, TankReading } from '@/client/typed-readings'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useLocale } from '@/client/use-locale'
import { useToday } from '@/client/use-today'
import { changedFacts, factTexts, judgesFor, QUANTITIES, type QuantityName, quantityTexts, unchangedOf } from './fact-texts.ts'

const NAMES = {
  tankSize: 'Tank',
  resinKind: 'Resin',
  volume: 'Resin volume',
  gravel: 'Gravel',
  tubeCut: 'Distributor tube, length',
  began: 'When it went in',
  lastSeenDay: 'Last seen working',
  backwash: 'Backwash rate',
}

const shown = (name: string, value: unknown, display: DayDisplay) => {
  if (value === null || value === undefined || value === '') return 'not known'
  if (name === 'resinKind') return resinKindWords[value as RecordedResinKind] ?? String(value)
  if (name === 'lastSeenDay') return formatDay(String(value), display)
  if (typeof value === 'object' && 'value' in value && 'unit' in value) return `${value.value} ${value.unit}`
  return String(value)
}

/** Changes what is known of a bed and its tank. Only what was changed is sent, with where it is from. */
export function EditFacts({ bed, onClose }: { bed: BedPage; onClose: () => void }) {
  const { api, me } = useSession()
  const today = useToday()
  const us = me.company.unitSystem === 'us'
  // What stood here when the form opened: changes are told by it, and the versions say what was seen.
  const locale = useLocale()
  const [start] = useState(() => ({ bed, texts: factTexts(bed) }))
  const { values, field } = useFields(() => start.texts)
  const room = tankRoomOf(values.tankSize, me.company)
  const amounts = useAmounts(QUANTITIES, { start: quantityTexts(bed, me.company.unitSystem, locale), judges: judgesFor(room) })
  const [amountsBefore] = useState(amounts.typed)
  const [source, setSource] = useState('call')
  const change = useCommand(api.beds.changeFacts.mutationOptions(), { onDone: onClose })
  const send = (over: BedPage) => {
    // What nobody changed is not asked back: it was asked when it came in, or came in before there were questions.
    const read = amounts.read(unchangedOf({ before: amountsBefore, now: amounts.typed }))
    if (read === null) return
    const facts = changedFacts({ before: start.texts, now: values }, { texts: { before: amountsBefore, now: amounts.typed }, read })
    if (Object.keys(facts).length === 0) return onClose()
    change.send({
      bedId: over.id,
      version: over.version,
      tankVersion: over.tank.version,
      valveVersion: over.valve?.version ?? null,
      source: oneOf(factSources, source) ?? 'call',
      facts,
      why: reasonsOf(read),
    })
  }
  const quantity = (name: QuantityName, hint?: string) => <AmountField label={NAMES[name]} hint={hint} {...amounts.field(name)} />
  return (
    <FormDialog
      title="Edit facts"
      lead="A changed fact updates the forecast within seconds. Leave blank if unknown."
      onClose={onClose}
      onSubmit={() => send(start.bed)}
      onKeepMine={() => send(bed)}
      busy={change.isPending}
      error={change.error}
      names={NAMES}
      show={(name, value) => shown(name, value, me.company)}
      saveLabel="Save and forecast again"
    >
      <Select
        label="How you know"
        choices={choicesOf(factSources, factSourceWords)}
        value={source}
        onChange={(event) => setSource(event.target.value)}
      />
      <TextInput label={NAMES.began} hint="In their words: 2014, before 2015, Mar 2012, 3/14/2018" maxLength={60} {...field('began')} />
      <BeganReading text={values.began} today={today} dayOrder={us ? 'month-first' : 'day-first'} />
      <DayInput label={NAMES.lastSeenDay} hint="Today, if they have soft water now" max={today} {...field('lastSeenDay')} />
      <TextInput label={NAMES.tankSize} hint="As on the label: 10x54, 48,000 grain, 42 L" maxLength={60} {...field('tankSize')} />
      <TankReading text={values.tankSize} />
      <Select label={NAMES.resinKind} choices={choicesOf(recordedResinKinds, resinKindWords)} {...field('resinKind')} />
      {quantity('volume')}
      {quantity('gravel', 'None? Type 0.')}
      {quantity('tubeCut')}
      {bed.softener ? quantity('backwash', 'Marked on the drain line flow control') : null}
    </FormDialog>
  )
}
