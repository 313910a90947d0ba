'use client'
import type { JobPage } from '@almanac/contract/jobs'
import type { MaterialLine } from '@almanac/contract/materials'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextLink } from '@almanac/ui/text-link'
import { stockRule } from '@almanac/units/amount-kinds'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { type FormEvent, useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useStockAmount } from '@/client/use-stock-amount'

/** Sets an item aside for a delivery. One that is set aside already gets its new quantity. */
export function AddMaterial({ job, lines }: { job: JobPage; lines: readonly MaterialLine[] }) {
  const { api } = useSession()
  const amountText = useStockAmount()
  const items = useQuery(api.stores.items.queryOptions({ input: { limit: 200 } }))
  const [chosen, setChosen] = useState('')
  const [turn, setTurn] = useState(0)
  if (items.error) return <Problem happened={readFailure(items.error).message} onRetry={() => void items.refetch()} />
  const rows = items.data?.rows ?? []
  if (items.data && rows.length === 0)
    return (
      <p className="mt-3">
        The stores have no items yet.{' '}
        <TextLink href="/stores" link={Link}>
          Add them
        </TextLink>
      </p>
    )
  const item = rows.find((row) => row.id === chosen)
  return (
    <div className="mt-4 flex flex-wrap items-end gap-3 print:hidden">
      <Select
        label="Item"
        none="Choose an item"
        value={chosen}
        onChange={(event) => setChosen(event.target.value)}
        choices={rows.map((row) => ({ value: row.id, label: `${row.name} (${amountText(row.onHand, row.unit)} on hand)` }))}
      />
      {item ? (
        <Quantity
          key={`${item.id} ${turn}`}
          job={job}
          item={item}
          already={lines.some((line) => line.stockItemId === item.id)}
          onDone={() => {
            setChosen('')
            setTurn(turn + 1)
          }}
        />
      ) : null}
    </div>
  )
}

type QuantityProps = { job: JobPage; item: { id: string; unit: string }; already: boolean; onDone: () => void }

function Quantity({ job, item, already, onDone }: QuantityProps) {
  const { api } = useSession()
  const { field, read } = useAmounts({ quantity: { ...stockRule(item.unit), above: true } }, { required: ['quantity'] })
  const set = useCommand(api.materials.set.mutationOptions(), { onDone })
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const quantity = read()?.quantity
    if (!quantity) return
    set.send({ jobId: job.id, jobVersion: job.version, stockItemId: item.id, quantity: quantity.value, why: quantity.why ?? undefined })
  }
  return (
    <form onSubmit={submit} className="flex flex-wrap items-end gap-3">
      <AmountField label="How much" {...field('quantity')} />
      <Button type="submit" busy={set.isPending}>
        {already ? 'Set the new quantity' : 'Set aside'}
      </Button>
      {set.error ? <Problem happened={readFailure(set.error).message} /> : null}
    </form>
  )
}
