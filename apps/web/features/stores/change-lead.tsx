'use client'
import type { OrderLine } from '@almanac/contract/stores'
import { NumberInput } from '@almanac/ui/number-input'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** How many days an item takes from the order to the shelf. */
export function ChangeLead({ line, onClose }: { line: OrderLine; onClose: () => void }) {
  const { api } = useSession()
  const [text, setText] = useState(String(line.leadDays))
  const [error, setError] = useState<string>()
  const change = useCommand(api.stores.changeLead.mutationOptions(), { onDone: onClose })
  const submit = () => {
    const leadDays = Number(text.trim())
    const fits = text.trim() !== '' && Number.isInteger(leadDays) && leadDays >= 0 && leadDays <= 365
    setError(fits ? undefined : 'Type whole days from 0 to 365.')
    if (fits) change.send({ stockItemId: line.stockItemId, version: line.version, leadDays })
  }
  return (
    <FormDialog
      title={`How long ${line.name} takes to come`}
      onClose={onClose}
      onSubmit={submit}
      busy={change.isPending}
      error={change.error}
      names={{ leadDays: 'Days from the order to the shelf' }}
    >
      <NumberInput
        label="Days from the order to the shelf"
        unit="days"
        value={text}
        error={error}
        onChange={(event) => setText(event.target.value)}
      />
    </FormDialog>
  )
}
