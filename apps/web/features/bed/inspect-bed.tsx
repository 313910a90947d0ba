'use client'
import type { BedPage } from '@almanac/contract/beds'
import { beadConditions, beadConditionWords } from '@almanac/records/bead-condition'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { Checkbox } from '@almanac/ui/checkbox'
import { DayInput } from '@almanac/ui/day-input'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { enteredIn, reasonsOf } from '@/client/amounts'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useDayField } from '@/client/use-today'

const MEASURED = { capacityShare: 'capacityShare', moistureShare: 'moistureShare', pressureDrop: 'pressureDrop' } as const

/** What was seen or measured of a bed without replacing it. */
export function InspectionForm({ bed, onClose }: { bed: BedPage; onClose: () => void }) {
  const { api } = useSession()
  const { values, field } = useFields(() => ({ beadCondition: '', notes: '' }))
  const on = useDayField()
  const amounts = useAmounts(MEASURED)
  const [working, setWorking] = useState(true)
  const inspect = useCommand(api.beds.inspect.mutationOptions(), { onDone: onClose })
  const submit = () => {
    const measured = amounts.read()
    if (measured === null) return
    const share = (key: 'capacityShare' | 'moistureShare') => measured[key] && measured[key].value / 100
    inspect.send({
      bedId: bed.id,
      day: on.day,
      beadCondition: oneOf(beadConditions, values.beadCondition),
      capacityShare: share('capacityShare'),
      moistureShare: share('moistureShare'),
      pressureDrop: enteredIn(measured.pressureDrop, ['psi', 'bar', 'kPa']) ?? null,
      why: reasonsOf(measured),
      notes: values.notes,
      working,
    })
  }
  return (
    <FormDialog title="Record an inspection" onClose={onClose} onSubmit={submit} busy={inspect.isPending} error={inspect.error}>
      <DayInput label="Day" required max={on.today} {...on.field} />
      <Checkbox
        label="The softener gave soft water that day"
        hint="Counts as last seen working, which moves the forecast"
        checked={working}
        onChange={(event) => setWorking(event.target.checked)}
      />
      <Select label="Beads" none="not looked at" choices={choicesOf(beadConditions, beadConditionWords)} {...field('beadCondition')} />
      <AmountField label="Capacity, share of a new bed" {...amounts.field('capacityShare')} />
      <AmountField label="Moisture of the beads" hint="From a lab" {...amounts.field('moistureShare')} />
      <AmountField label="Pressure drop in service" {...amounts.field('pressureDrop')} />
      <TextArea label="Notes" maxLength={2000} {...field('notes')} />
    </FormDialog>
  )
}
