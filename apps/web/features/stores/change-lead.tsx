'use client'
import type { OrderLine } from '@almanac/contract/stores'
import { AmountField } from '@/client/amount-field'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'

/** How many days an item takes from the order to the shelf. */
export function ChangeLead({ line, onClose }: { line: OrderLine; onClose: () => void }) {
  const { api } = useSession()
  const { field, read } = useAmounts(
    { leadDays: 'leadDays' },
    { required: ['leadDays'], start: { leadDays: { text: String(line.leadDays) } } },
  )
  const change = useCommand(api.stores.changeLead.mutationOptions(), { onDone: onClose })
  const submit = () => {
    const leadDays = read()?.leadDays?.value
    if (leadDays !== undefined) change.send({ stockItemId: line.stockItemId, version: line.version, leadDays })
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
      <AmountField label="Days from the order to the shelf" {...field('leadDays')} />
    </FormDialog>
  )
}
