'use client'
import type { Price } from '@almanac/contract/agreements'
import { DayInput } from '@almanac/ui/day-input'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { useState } from 'react'
import { FormDialog } from '../form-dialog.tsx'
import { useSession } from '../providers.tsx'
import { useCommand } from '../use-command.ts'
import { useFields } from '../use-fields.ts'
import { useToday } from '../use-today.ts'
import { PriceFields, usePrice } from './price-line.tsx'

type Renewed = { id: string; version: number; untilDay: string | null; price: Price | null }

/** A further price line: from the day after the last one, to an end of its own. */
export function RenewAgreement({ agreement, onClose }: { agreement: Renewed; onClose: () => void }) {
  const { api } = useSession()
  const today = useToday()
  const [seen] = useState(agreement.version)
  const { values, field } = useFields(() => ({ fromDay: agreement.untilDay ? addDays(agreement.untilDay, 1) : today, untilDay: '' }))
  const price = usePrice(agreement.price)
  const renew = useCommand(api.agreements.renew.mutationOptions(), { onDone: onClose })
  const send = (version: number) => {
    const read = price.read()
    if (read === null) return
    renew.send({ agreementId: agreement.id, version, fromDay: values.fromDay, untilDay: values.untilDay || null, price: read })
  }
  return (
    <FormDialog
      title="Renew the agreement"
      lead="It goes on as often as before. The old price stays on record."
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(agreement.version)}
      busy={renew.isPending}
      error={renew.error}
      saveLabel="Renew"
    >
      <DayInput label="New price from" required {...field('fromDay')} />
      <DayInput label="Agreed until" hint="Leave blank for no end" min={values.fromDay} {...field('untilDay')} />
      <PriceFields price={price} />
    </FormDialog>
  )
}
