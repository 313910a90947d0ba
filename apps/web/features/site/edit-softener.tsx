'use client'
import type { SiteSoftener } from '@almanac/contract/sites'
import { arrangements, arrangementWords } from '@almanac/records/arrangement'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { ArchiveThing } from './archive-thing.tsx'

const NAMES = {
  valveCardId: 'Valve',
  label: 'Name',
  location: 'Where it is',
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
    notes: softener.notes ?? '',
  }))
  const amounts = useAmounts(
    { peopleServed: 'people' },
    { start: { peopleServed: { text: softener.peopleServed === null ? '' : String(softener.peopleServed) } } },
  )
  const change = useCommand(api.sites.changeSoftener.mutationOptions(), { onDone: onClose })
  const archive = useCommand(api.archive.softener.mutationOptions(), { onDone: onClose })
  const send = (version: number) => {
    const read = amounts.read()
    if (read === null) return
    const people = read.peopleServed?.value ?? null
    const why = read.peopleServed?.why ?? undefined
    const arrangement = oneOf(arrangements, values.arrangement) ?? 'single'
    change.send({
      ...{ softenerId: softener.id, version, ...values, arrangement },
      ...{ peopleServed: people, why, valveCardId: values.valveCardId || null },
    })
  }
  return (
    <FormDialog
      title="Edit softener"
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(softener.version)}
      busy={change.isPending}
      error={change.error}
      names={NAMES}
    >
      <TextInput label={NAMES.label} required maxLength={120} {...field('label')} />
      <TextInput label={NAMES.location} hint="Basement, garage, outdoors" maxLength={120} {...field('location')} />
      <Select label={NAMES.arrangement} choices={choicesOf(arrangements, arrangementWords)} {...field('arrangement')} />
      <AmountField label={NAMES.peopleServed} hint="More people use more water" {...amounts.field('peopleServed')} />
      <Select
        label={NAMES.valveCardId}
        hint="Sets tube and backwash if the unit’s own are not recorded"
        none="not known"
        choices={figures.valves.map((card) => ({ value: card.id, label: card.label }))}
        {...field('valveCardId')}
      />
      <TextArea label={NAMES.notes} {...field('notes')} />
      <ArchiveThing
        label="Archive softener"
        consequence="The softener and its bed leave every list and forecast."
        command={{ ...archive, send: (reason) => archive.send({ softenerId: softener.id, version: seen, reason }) }}
      />
    </FormDialog>
  )
}
