'use client'
import type { CrewVehicle } from '@almanac/contract/crews'
import { Checkbox } from '@almanac/ui/checkbox'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { reasonsOf } from '@/client/amounts'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useLocale } from '@/client/use-locale'
import { roomTexts } from './room-words.ts'

const NAMES = { name: 'Name', volumeFt3: 'Room', weightLb: 'Payload', left: 'Retired' }

/** Adds or changes a vehicle: what it is called and what it carries. */
export function EditVehicle({ vehicle, onClose }: { vehicle: CrewVehicle | null; onClose: () => void }) {
  const { api, me } = useSession()
  const { unitSystem } = me.company
  const [seen] = useState(vehicle)
  const [left, setLeft] = useState(vehicle?.left ?? false)
  const locale = useLocale()
  const { values, field } = useFields(() => ({ name: vehicle?.name ?? '' }))
  const amounts = useAmounts(
    { volume: 'vehicleRoom', weight: 'payload' },
    { required: ['volume', 'weight'], start: vehicle ? roomTexts(vehicle, unitSystem, locale) : {} },
  )
  const add = useCommand(api.crews.addVehicle.mutationOptions(), { onDone: onClose })
  const change = useCommand(api.crews.changeVehicle.mutationOptions(), { onDone: onClose })
  const send = (over: CrewVehicle | null) => {
    const read = amounts.read()
    if (!read?.volume || !read.weight) return
    const why = reasonsOf({ volumeFt3: read.volume, weightLb: read.weight })
    const body = { name: values.name, volumeFt3: read.volume.value, weightLb: read.weight.value, why }
    if (over) change.send({ ...body, vehicleId: over.id, version: over.version, left })
    else add.send(body)
  }
  return (
    <FormDialog
      title={seen ? seen.name : 'A vehicle'}
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(vehicle)}
      busy={add.isPending || change.isPending}
      error={add.error ?? change.error}
      names={NAMES}
    >
      <TextInput label={NAMES.name} required maxLength={80} {...field('name')} />
      <AmountField label="Room for material" {...amounts.field('volume')} />
      <AmountField
        label="Payload for material"
        hint="New resin out, wet old resin back: what the vehicle may carry besides people and tools"
        {...amounts.field('weight')}
      />
      {seen ? (
        <Checkbox
          label="Retired"
          hint="Not offered for day sheets any more; past work stays on record"
          checked={left}
          onChange={(event) => setLeft(event.target.checked)}
        />
      ) : null}
    </FormDialog>
  )
}
