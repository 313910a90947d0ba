'use client'
import type { StockRow } from '@almanac/contract/stores'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { stockRule } from '@almanac/units/amount-kinds'
import { formatAmount } from '@almanac/units/amount-words'
import type { FormEvent } from 'react'
import { AmountField } from '@/client/amount-field'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'

export type StockChange = { item: StockRow; what: 'receive' | 'count' }

/** A delivery taken in, or a count that stands from now on. */
export function ChangeStock({ change, onClose }: { change: StockChange; onClose: () => void }) {
  const { api, me } = useSession()
  const { item, what } = change
  const rule = { ...stockRule(item.unit), above: what === 'receive' }
  const { field, read } = useAmounts({ quantity: rule }, { required: ['quantity'] })
  const receive = useCommand(api.stores.receive.mutationOptions(), { onDone: onClose })
  const count = useCommand(api.stores.count.mutationOptions(), { onDone: onClose })
  const failure = receive.error ?? count.error
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const quantity = read()?.quantity
    if (!quantity) return
    const why = quantity.why ?? undefined
    if (what === 'receive') receive.send({ stockItemId: item.id, quantity: quantity.value, why })
    else count.send({ stockItemId: item.id, version: item.version, counted: quantity.value, why })
  }
  return (
    <Dialog open onClose={onClose} title={what === 'receive' ? `Receive ${item.name}` : `Count ${item.name}`}>
      <form onSubmit={submit} className="flex flex-col gap-4">
        <p className="text-soft">On record: {formatAmount(item.onHand, item.unit, me.company)}.</p>
        <AmountField label={what === 'receive' ? 'Received' : 'Counted on the shelf'} {...field('quantity')} />
        {failure ? <Problem happened={readFailure(failure).message} /> : null}
        <Button kind="ink" type="submit" busy={receive.isPending || count.isPending} busyLabel="Saving">
          {what === 'receive' ? 'Add to stock' : 'Save the count'}
        </Button>
      </form>
    </Dialog>
  )
}
