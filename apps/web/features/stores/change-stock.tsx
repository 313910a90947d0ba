'use client'
import type { StockRow } from '@almanac/contract/stores'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { NumberInput } from '@almanac/ui/number-input'
import { Problem } from '@almanac/ui/problem'
import { formatAmount } from '@almanac/units/amount-words'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

export type StockChange = { item: StockRow; what: 'receive' | 'count' }

/** A delivery taken in, or a count that stands from now on. */
export function ChangeStock({ change, onClose }: { change: StockChange; onClose: () => void }) {
  const { api } = useSession()
  const { item, what } = change
  const [text, setText] = useState('')
  const [error, setError] = useState<string>()
  const receive = useCommand(api.stores.receive.mutationOptions(), { onDone: onClose })
  const count = useCommand(api.stores.count.mutationOptions(), { onDone: onClose })
  const failure = receive.error ?? count.error
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const value = text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.'))
    if (!Number.isFinite(value) || value < 0 || (what === 'receive' && value === 0)) {
      setError('Type a number, such as 4.')
      return
    }
    setError(undefined)
    if (what === 'receive') receive.send({ stockItemId: item.id, quantity: value })
    else count.send({ stockItemId: item.id, version: item.version, counted: value })
  }
  return (
    <Dialog open onClose={onClose} title={what === 'receive' ? `Receive ${item.name}` : `Count ${item.name}`}>
      <form onSubmit={submit} className="flex flex-col gap-4">
        <p className="text-soft">The books say {formatAmount(item.onHand, item.unit)}.</p>
        <NumberInput
          label={what === 'receive' ? 'Received' : 'Counted on the shelf'}
          unit={item.unit}
          value={text}
          error={error}
          onChange={(event) => setText(event.target.value)}
        />
        {failure ? <Problem happened={readFailure(failure).message} /> : null}
        <Button kind="ink" type="submit" busy={receive.isPending || count.isPending} busyLabel="Saving">
          {what === 'receive' ? 'Take in' : 'Save the count'}
        </Button>
      </form>
    </Dialog>
  )
}
