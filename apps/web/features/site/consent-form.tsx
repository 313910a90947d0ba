'use client'
import type { ContactLine } from '@almanac/contract/site-facts'
import { type Channel, channelWords } from '@almanac/records/channel'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { consentSources, consentSourceWords } from '@almanac/records/consent-source'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DayInput } from '@almanac/ui/day-input'
import { Select } from '@almanac/ui/select'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useDayField } from '@/client/use-today'

type Props = { contact: ContactLine; channel: Channel; onClose: () => void }

/** What a person answered when asked whether they may be reached on a channel. */
export function ConsentForm({ contact, channel, onClose }: Props) {
  const { api } = useSession()
  const before = contact.consents.find((one) => one.channel === channel)
  const [seen] = useState(before?.version ?? null)
  const { values, field, set } = useFields(() => ({
    granted: before ? (before.granted ? 'yes' : 'no') : '',
    source: 'call',
  }))
  const since = useDayField()
  const keep = useCommand(api.sites.setConsent.mutationOptions(), { onDone: onClose })
  const send = (version: number | null) =>
    keep.send({
      contactId: contact.id,
      channel,
      granted: values.granted === 'yes',
      source: oneOf(consentSources, values.source) ?? 'call',
      sinceDay: since.day,
      version,
    })
  const [missing, setMissing] = useState<string>()
  const label = channelWords[channel]
  return (
    <FormDialog
      title={`${label}: ${contact.name ?? 'this contact'}`}
      lead="Only a yes lets a reminder go out this way. The earlier answer stays on record."
      onClose={onClose}
      onSubmit={() => (values.granted ? send(seen) : setMissing('Choose what they answered.'))}
      onKeepMine={() => send(before?.version ?? null)}
      busy={keep.isPending}
      error={keep.error}
      names={{ granted: 'Answer', source: 'Source', sinceDay: 'Since' }}
    >
      <ChoiceGroup
        label="They answered"
        inline
        error={missing}
        choices={[
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No' },
        ]}
        value={values.granted}
        onChange={(granted) => set({ granted })}
      />
      <Select label="Where" choices={choicesOf(consentSources, consentSourceWords)} {...field('source')} />
      <DayInput label="Since" required max={since.today} {...since.field} />
    </FormDialog>
  )
}
