'use client'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DayInput } from '@almanac/ui/day-input'
import { useDisplay } from '@almanac/ui/display'
import { TextInput } from '@almanac/ui/text-input'
import { formatDay } from '@almanac/units/format-day'
import { useState } from 'react'
import { FormDialog } from '../form-dialog.tsx'
import { useSession } from '../providers.tsx'
import { useCommand } from '../use-command.ts'
import { useDayField } from '../use-today.ts'

const CHOICES = [
  { value: 'done', label: 'Done without a job' },
  { value: 'skipped', label: 'Skip it' },
] as const

/** What became of a turn that no job of ours did. */
export function SettleTurn({ turn, onClose }: { turn: { agreementId: string; dueDay: string; version: number }; onClose: () => void }) {
  const { api } = useSession()
  const display = useDisplay()
  const on = useDayField()
  const [outcome, setOutcome] = useState<'done' | 'skipped'>('done')
  const [reason, setReason] = useState('')
  const settle = useCommand(api.agreements.settleTurn.mutationOptions(), { onDone: onClose })
  const { agreementId, dueDay, version } = turn
  return (
    <FormDialog
      title={`Due ${formatDay(dueDay, display)}`}
      lead="It leaves the list. You can take this back on the site’s page."
      onClose={onClose}
      onSubmit={() => settle.send({ agreementId, dueDay, version, outcome, doneDay: outcome === 'done' ? on.day : null, reason })}
      busy={settle.isPending}
      error={settle.error}
    >
      <ChoiceGroup
        label="What happened?"
        choices={CHOICES}
        value={outcome}
        onChange={(value) => setOutcome(value === 'skipped' ? 'skipped' : 'done')}
      />
      {outcome === 'done' ? <DayInput label="Done on" required max={on.today} {...on.field} /> : null}
      <TextInput
        label={outcome === 'done' ? 'Note (optional)' : 'Why it’s skipped'}
        required={outcome === 'skipped'}
        maxLength={500}
        value={reason}
        onChange={(event) => setReason(event.target.value)}
      />
    </FormDialog>
  )
}
