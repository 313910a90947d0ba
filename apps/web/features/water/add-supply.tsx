'use client'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { useRouter } from 'next/navigation'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** A new supply: its name and kind; the history follows on its own page. */
export function AddSupply({ open, onClose }: { open: boolean; onClose: () => void }) {
  const { api } = useSession()
  const router = useRouter()
  const [name, setName] = useState('')
  const [kind, setKind] = useState<'town' | 'private-well'>('town')
  const add = useCommand(api.water.addSupply.mutationOptions(), { onDone: ({ waterSupplyId }) => router.push(`/water/${waterSupplyId}`) })
  const submit = (event: FormEvent) => {
    event.preventDefault()
    add.send({ name, kind })
  }
  return (
    <Dialog open={open} onClose={onClose} title="Add a supply">
      <form onSubmit={submit} className="flex flex-col gap-4">
        <TextInput
          label="Name"
          hint="The town’s supply as people call it, or whose well it is"
          value={name}
          onChange={(event) => setName(event.target.value)}
          required
        />
        <Select
          label="Kind"
          value={kind}
          onChange={(event) => setKind(event.target.value === 'town' ? 'town' : 'private-well')}
          choices={[
            { value: 'town', label: 'town' },
            { value: 'private-well', label: 'private well' },
          ]}
        />
        {add.error ? <Problem happened={readFailure(add.error).message} /> : null}
        <Button kind="ink" type="submit" busy={add.isPending} busyLabel="Adding">
          Add supply
        </Button>
      </form>
    </Dialog>
  )
}
