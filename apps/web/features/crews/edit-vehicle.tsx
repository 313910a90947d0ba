'use client'
import type { CrewVehicle } from '@almanac/contract/crews'
import { Checkbox } from '@almanac/ui/checkbox'
import { NumberInput } from '@almanac/ui/number-input'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { readRoom, roomTexts, roomUnits } from './room-words.ts'

const NAMES = { name: 'Name', volumeFt3: 'Room', weightLb: 'Payload', left: 'Given up' }

/** Adds or changes a vehicle: what it is called and what it carries. */
export function EditVehicle({ vehicle, onClose }: { vehicle: CrewVehicle | null; onClose: () => void }) {
  const { api, me } = useSession()
  const { unitSystem } = me.company
  const [seen] = useState(vehicle)
  const [left, setLeft] = useState(vehicle?.left ?? false)
  const { values, field } = useFields(() => ({
    name: vehicle?.name ?? '',
    ...(vehicle ? roomTexts(vehicle, unitSystem) : { volume: '', weight: '' }),
  }))
  const [tried, setTried] = useState(false)
  const add = useCommand(api.crews.addVehicle.mutationOptions(), { onDone: onClose })
  const change = useCommand(api.crews.changeVehicle.mutationOptions(), { onDone: onClose })
  const { volumeFt3, weightLb } = readRoom(values, unitSystem)
  const units = roomUnits(unitSystem)
  const send = (over: CrewVehicle | null) => {
    setTried(true)
    if (volumeFt3 === undefined || weightLb === undefined) return
    const body = { name: values.name, volumeFt3, weightLb }
    if (over) change.send({ ...body, vehicleId: over.id, version: over.version, left })
    else add.send(body)
  }
  const wrong = (value: number | undefined) => (tried && value === undefined ? 'Type a number, such as 12.' : undefined)
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
      <NumberInput label="Room for material" unit={units.volume} error={wrong(volumeFt3)} {...field('volume')} />
      <NumberInput
        label="Payload for material"
        hint="Resin out in the morning, wet spent resin back: what the vehicle may carry beside people and tools"
        unit={units.weight}
        error={wrong(weightLb)}
        {...field('weight')}
      />
      {seen ? (
        <Checkbox
          label="Given up"
          hint="No longer offered for day sheets; what it did stays on record"
          checked={left}
          onChange={(event) => setLeft(event.target.checked)}
        />
      ) : null}
    </FormDialog>
  )
}
