'use client'
import { Button } from '@almanac/ui/button'
import { DayInput } from '@almanac/ui/day-input'
import { Dialog } from '@almanac/ui/dialog'
import { NumberInput } from '@almanac/ui/number-input'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useQuantities } from './use-quantities.ts'
import { DISINFECTANTS } from './water-words.ts'

type Props = { waterSupplyId: string; open: boolean; onClose: () => void; onDone: (beds: number) => void }

/** What a supply delivers from a day on. */
export function AddPeriod({ waterSupplyId, open, onClose, onDone }: Props) {
  const { api, me } = useSession()
  const [fromDay, setFromDay] = useState('')
  const [disinfectant, setDisinfectant] = useState<(typeof DISINFECTANTS)[number]['value']>('free-chlorine')
  const [source, setSource] = useState('')
  const { field, read, setErrors } = useQuantities({
    residual: 'mg/L',
    hardness: me.company.unitSystem === 'us' ? 'gpg' : 'mg/L',
    iron: 'mg/L',
  })
  const add = useCommand(api.water.addPeriod.mutationOptions(), {
    onDone: ({ bedsToForecast }) => {
      onDone(bedsToForecast)
      onClose()
    },
  })
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const residual = read<'mg/L' | 'ug/L'>('residual')
    const hardness = read<'gpg' | 'mg/L' | 'dH' | 'fH' | 'mmol/L'>('hardness')
    const iron = read<'mg/L' | 'ug/L'>('iron')
    setErrors({ residual: residual.error, hardness: hardness.error, iron: iron.error })
    if (residual.error || hardness.error || iron.error) return
    add.send({
      waterSupplyId,
      fromDay: fromDay || null,
      disinfectant,
      residual: residual.value,
      hardness: hardness.value,
      iron: iron.value,
      source,
    })
  }
  return (
    <Dialog open={open} onClose={onClose} title="What the supply delivers from a day on">
      <form onSubmit={submit} className="flex flex-col gap-4">
        <DayInput
          label="From"
          hint="Empty means as far back as anyone knows"
          value={fromDay}
          onChange={(event) => setFromDay(event.target.value)}
        />
        <Select
          label="Disinfectant"
          value={disinfectant}
          onChange={(event) => setDisinfectant(DISINFECTANTS.find((one) => one.value === event.target.value)?.value ?? 'unknown')}
          choices={DISINFECTANTS}
        />
        <NumberInput
          label="Residual as Cl₂"
          hint="Free chlorine; total chlorine where chloramine is used"
          unit={['mg/L', 'ug/L']}
          {...field('residual')}
        />
        <NumberInput label="Hardness as CaCO₃" unit={['gpg', 'mg/L', 'dH', 'fH', 'mmol/L']} {...field('hardness')} />
        <NumberInput label="Iron" unit={['mg/L', 'ug/L']} {...field('iron')} />
        <TextInput
          label="From whom"
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
