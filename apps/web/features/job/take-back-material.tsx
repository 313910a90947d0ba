'use client'
import type { MaterialLine } from '@almanac/contract/materials'
import { stockRule } from '@almanac/units/amount-kinds'
import { formatAmount } from '@almanac/units/amount-words'
import { AmountField } from '@/client/amount-field'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'

/** Some of what a customer had is back on the shelf. */
export function TakeBackMaterial({ line, onClose }: { line: MaterialLine; onClose: () => void }) {
  const { api, me } = useSession()
  const { field, read } = useAmounts({ quantity: { ...stockRule(line.unit), above: true } }, { required: ['quantity'] })
  const takeBack = useCommand(api.materials.takeBack.mutationOptions(), { onDone: onClose })
  const submit = () => {
    const quantity = read()?.quantity
    if (quantity) takeBack.send({ lineId: line.id, version: line.version, quantity: quantity.value })
  }
  return (
    <FormDialog
      title={`${line.name} came back`}
      lead={`The customer has ${formatAmount(line.quantity - line.returned, line.unit, me.company)}.`}
      onClose={onClose}
      onSubmit={submit}
      busy={takeBack.isPending}
      error={takeBack.error}
      names={{ quantity: 'How much came back' }}
    >
      <AmountField label="How much came back" {...field('quantity')} />
    </FormDialog>
  )
}
