'use client'
import type { AgreementCard } from '@almanac/contract/agreements'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DayInput } from '@almanac/ui/day-input'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useDayField } from '@/client/use-today'

const CHOICES = [
  { value: 'asked', label: 'It ends' },
  { value: 'mistake', label: 'It was entered by mistake' },
] as const

/** Ends an agreement with a day, or says that it never was. */
export function EndAgreement({ agreement, onClose }: { agreement: AgreementCard; onClose: () => void }) {
  const { api } = useSession()
  const [seen] = useState(agreement.version)
  const last = useDayField()
  const [why, setWhy] = useState<'asked' | 'mistake'>('asked')
  const end = useCommand(api.agreements.end.mutationOptions(), { onDone: onClose })
  const send = (version: number) => end.send({ agreementId: agreement.id, version, lastDay: last.day, why })
  return (
    <FormDialog
      title="End the agreement?"
      lead="Nothing due later is listed any more. Jobs already added stay until you call them off."
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(agreement.version)}
      busy={end.isPending}
      error={end.error}
      saveLabel="End agreement"
    >
      <ChoiceGroup label="Why" choices={CHOICES} value={why} onChange={(value) => setWhy(value === 'mistake' ? 'mistake' : 'asked')} />
      <DayInput label="Last day" required {...last.field} />
    </FormDialog>
  )
}
