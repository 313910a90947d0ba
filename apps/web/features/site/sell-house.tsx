'use client'
import type { SiteTenure } from '@almanac/contract/sites'
import { DayInput } from '@almanac/ui/day-input'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { emptyHolder, HolderFields, holderOf } from '@/client/holder-fields'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useDayField } from '@/client/use-today'

/** A house is sold: the softener stays, its holder changes. */
export function SellHouse({ siteId, tenure, onClose }: { siteId: string; tenure: SiteTenure | null; onClose: () => void }) {
  const { api } = useSession()
  const [seen] = useState(tenure?.version ?? null)
  const holder = useFields(emptyHolder)
  const from = useDayField()
  const change = useCommand(api.sites.changeHolder.mutationOptions(), { onDone: onClose })
  const send = (tenureVersion: number | null) => change.send({ siteId, tenureVersion, fromDay: from.day, holder: holderOf(holder.values) })
  return (
    <FormDialog
      title={tenure ? 'House sold' : 'Current customer'}
      lead={
        tenure
          ? `${tenure.customer.name} is the customer until the day before. The softener, its beds and their history stay with the site.`
          : undefined
      }
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(tenure?.version ?? null)}
      busy={change.isPending}
      error={change.error}
      saveLabel={tenure ? 'Transfer site' : 'Save'}
    >
      <DayInput label="New customer from" required max={from.today} {...from.field} />
      <HolderFields form={holder} />
    </FormDialog>
  )
}
