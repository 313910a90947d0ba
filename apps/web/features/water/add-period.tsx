'use client'
import type { SupplyPeriodRow } from '@almanac/contract/water'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { disinfectantWords, recordedDisinfectants } from '@almanac/records/disinfectant'
import { periodBefore } from '@almanac/service-rules/water/supply-change'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { DayInput } from '@almanac/ui/day-input'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { useWords } from '@almanac/words/use-words'
import { type FormEvent, useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { reasonsOf } from '@/client/amounts'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { concentrationOf, hardnessOf, hardnessWords, mgL } from './water-words.ts'

type Props = { waterSupplyId: string; periods: readonly SupplyPeriodRow[]; onClose: () => void; onDone: (beds: number) => void }

const DELIVERED = { residual: 'chlorine', hardness: 'hardness', iron: 'iron' } as const
type Name = keyof typeof DELIVERED
const NAMES = Object.keys(DELIVERED) as Name[]

/** What a supply delivers from a day on. An empty field leaves the value as it was before that day; not known is said outright. */
export function AddPeriod({ waterSupplyId, periods, onClose, onDone }: Props) {
  const { api, me } = useSession()
  const words = useWords('water')
  const [fromDay, setFromDay] = useState('')
  const before = periodBefore(periods, fromDay || null)
  const [disinfectant, setDisinfectant] = useState('')
  const [unknown, setUnknown] = useState<Record<Name, boolean>>({ residual: false, hardness: false, iron: false })
  const [source, setSource] = useState('')
  const { field, read } = useAmounts(DELIVERED)
  const add = useCommand(api.water.addPeriod.mutationOptions(), {
    onDone: ({ bedsToForecast }) => {
      onDone(bedsToForecast)
      onClose()
    },
  })
  const chosen = oneOf(recordedDisinfectants, disinfectant) ?? undefined
  const goesOn = chosen === undefined || chosen === before?.disinfectant
  const was: Record<Name, string | null> = {
    residual: goesOn ? mgL(before?.residualMgL ?? null, me.company) : null,
    hardness: before ? hardnessWords(before, me.company, words) : null,
    iron: mgL(before?.ironMgL ?? null, me.company),
  }
  /** Said outright, of a value that was known before; whoever takes the day back to where nothing was known says nothing by it. */
  const notKnown = (name: Name) => unknown[name] && was[name] !== null
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const told = read(NAMES.filter(notKnown))
    if (told === null) return
    add.send({
      waterSupplyId,
      fromDay: fromDay || null,
      disinfectant: chosen,
      residual: notKnown('residual') ? null : concentrationOf(told.residual),
      hardness: notKnown('hardness') ? null : hardnessOf(told.hardness),
      iron: notKnown('iron') ? null : concentrationOf(told.iron),
      why: reasonsOf(told),
      source,
    })
  }
  const quantity = (name: Name, label: string, of: string, hint?: string) => (
    <div>
      <AmountField
        {...field(name)}
        label={label}
        hint={[hint, was[name] === null ? null : `Blank: as before, ${was[name]}`].filter(Boolean).join('. ') || undefined}
        disabled={notKnown(name)}
      />
      {was[name] === null ? null : (
        <Checkbox
          label={`${of} not known`}
          checked={notKnown(name)}
          onChange={(event) => setUnknown({ ...unknown, [name]: event.target.checked })}
        />
      )}
    </div>
  )
  return (
    <Dialog open onClose={onClose} title="Water quality from a date">
      <form onSubmit={submit} className="flex flex-col gap-4">
        <DayInput
          label="From"
          hint="Blank means as far back as anyone knows"
          value={fromDay}
          onChange={(event) => setFromDay(event.target.value)}
        />
        <Select
          label="Disinfectant"
          value={disinfectant}
          none={before ? `As before: ${disinfectantWords[before.disinfectant]}` : 'Choose'}
          required={!before}
          onChange={(event) => setDisinfectant(event.target.value)}
          choices={choicesOf(recordedDisinfectants, disinfectantWords)}
        />
        {quantity('residual', 'Residual as Cl₂', 'Residual', 'Free chlorine; total chlorine where chloramine is used')}
        {quantity('hardness', 'Hardness as CaCO₃', 'Hardness')}
        {quantity('iron', 'Iron', 'Iron')}
        <TextInput
          label="Source"
          hint="The supplier’s yearly report, a letter, a call"
          value={source}
          onChange={(event) => setSource(event.target.value)}
          required
        />
        {add.error ? <Problem happened={readFailure(add.error).message} /> : null}
        <Button kind="ink" type="submit" busy={add.isPending} busyLabel="Saving">
          Save and forecast again
        </Button>
      </form>
    </Dialog>
  )
}
