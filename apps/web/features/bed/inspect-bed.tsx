'use client'
import type { BedPage } from '@almanac/contract/beds'
import { beadConditions, beadConditionWords } from '@almanac/records/bead-condition'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { Checkbox } from '@almanac/ui/checkbox'
import { DayInput } from '@almanac/ui/day-input'
import { NumberInput } from '@almanac/ui/number-input'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { parseQuantity } from '@almanac/units/parse-quantity'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useDayField } from '@/client/use-today'

/** A share typed in per cent; null for an empty field, undefined where it is no number in range. */
function share(text: string, most: number): number | null | undefined {
  if (text.trim() === '') return null
  const percent = Number(text.trim().replace('%', '').replace(',', '.'))
  return Number.isFinite(percent) && percent >= 0 && percent <= most ? percent / 100 : undefined
}

/** What was seen or measured of a bed without replacing it. */
export function InspectBed({ bed, onClose }: { bed: BedPage; onClose: () => void }) {
  const { api, me } = useSession()
  const { values, field, set } = useFields(() => ({
    ...{ beadCondition: '', capacity: '', moisture: '', drop: '', notes: '' },
    dropUnit: me.company.unitSystem === 'us' ? 'psi' : 'bar',
  }))
  const on = useDayField()
  const [working, setWorking] = useState(true)
  const [errors, setErrors] = useState<{ capacity?: string; moisture?: string; drop?: string }>({})
  const inspect = useCommand(api.beds.inspect.mutationOptions(), { onDone: onClose })
  const submit = () => {
    const capacityShare = share(values.capacity, 150)
    const moistureShare = share(values.moisture, 100)
    const unit = values.dropUnit === 'bar' ? ('bar' as const) : ('psi' as const)
    const drop = values.drop.trim() === '' ? null : parseQuantity(`${values.drop} ${unit}`)
    setErrors({
      capacity: capacityShare === undefined ? 'Type per cent of a new bed, 0 to 150.' : undefined,
      moisture: moistureShare === undefined ? 'Type per cent, 0 to 100.' : undefined,
      drop: drop && !drop.ok ? drop.reason : undefined,
    })
    if (capacityShare === undefined || moistureShare === undefined || (drop && !drop.ok)) return
    inspect.send({
      bedId: bed.id,
      day: on.day,
      beadCondition: oneOf(beadConditions, values.beadCondition),
      capacityShare,
      moistureShare,
      pressureDrop: drop && { value: drop.value, unit },
      notes: values.notes,
      working,
    })
  }
  return (
    <FormDialog title="Note an inspection" onClose={onClose} onSubmit={submit} busy={inspect.isPending} error={inspect.error}>
      <DayInput label="Day" required max={on.today} {...on.field} />
      <Checkbox
        label="The softener gave soft water that day"
        hint="Counts as last seen working, which moves the forecast"
        checked={working}
        onChange={(event) => setWorking(event.target.checked)}
      />
      <Select label="Beads" none="not looked at" choices={choicesOf(beadConditions, beadConditionWords)} {...field('beadCondition')} />
      <NumberInput label="Capacity, of a new bed" unit="%" error={errors.capacity} {...field('capacity')} />
      <NumberInput label="Moisture of the beads" hint="From a laboratory" unit="%" error={errors.moisture} {...field('moisture')} />
      <NumberInput
        label="Pressure drop in service"
        unit={['psi', 'bar']}
        chosenUnit={values.dropUnit}
        onUnit={(dropUnit) => set({ dropUnit })}
        error={errors.drop}
        {...field('drop')}
      />
      <TextArea label="Notes" maxLength={2000} {...field('notes')} />
    </FormDialog>
  )
}
