'use client'
import type { SiteSoftener } from '@almanac/contract/sites'
import { arrangements, arrangementWords } from '@almanac/records/arrangement'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'

const NAMES = {
  valveCardId: 'Valve',
  label: 'Name',
  location: 'Where it stands',
  arrangement: 'Tanks',
  peopleServed: 'People served',
  notes: 'Notes',
}

/** Changes a softener's own facts; more people means more water through its beds. */
export function EditSoftener({ softener, onClose }: { softener: SiteSoftener; onClose: () => void }) {
  const { api, figures } = useSession()
  const [seen] = useState(softener.version)
  const { values, field } = useFields(() => ({
    label: softener.label,
    location: softener.location ?? '',
    arrangement: softener.arrangement as string,
    valveCardId: softener.valveCardId ?? '',
    peopleServed: softener.peopleServed === null ? '' : String(softener.peopleServed),
    notes: softener.notes ?? '',
  }))
  const [error, setError] = useState<string>()
  const change = useCommand(api.sites.changeSoftener.mutationOptions(), { onDone: onClose })
  const send = (version: number) => {
    const typed = values.peopleServed.trim()
    const people = typed === '' ? null : Number(typed)
    const wrong = people !== null && !(Number.isInteger(people) && people > 0)
    setError(wrong ? 'Type a whole number of people, such as 4, or leave it empty.' : undefined)
    if (wrong) return
    const arrangement = oneOf(arrangements, values.arrangement) ?? 'single'
    change.send({ softenerId: softener.id, version, ...values, arrangement, peopleServed: people, valveCardId: values.valveCardId || null })
  }
  return (
    <FormDialog
      title="Change the softener"
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(softener.version)}
      busy={change.isPending}
      error={change.error}
      names={NAMES}
    >
      <TextInput label={NAMES.label} required maxLength={120} {...field('label')} />
      <TextInput label={NAMES.location} hint="Cellar, garage, outside under a lid" maxLength={120} {...field('location')} />
      <Select label={NAMES.arrangement} choices={choicesOf(arrangements, arrangementWords)} {...field('arrangement')} />
      <TextInput
        label={NAMES.peopleServed}
        hint="More people, more water through the bed"
        inputMode="numeric"
        error={error}
        {...field('peopleServed')}
      />
      <Select
        label={NAMES.valveCardId}
        hint="Its tube and backwash follow from it where the unit’s own are not recorded"
        none="not known"
        choices={figures.valves.map((card) => ({ value: card.id, label: card.label }))}
        {...field('valveCardId')}
      />
      <TextArea label={NAMES.notes} {...field('notes')} />
    </FormDialog>
  )
}
