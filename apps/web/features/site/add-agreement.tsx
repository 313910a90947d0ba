'use client'
import type { SiteSoftener } from '@almanac/contract/sites'
import { agreementKinds, agreementKindWords } from '@almanac/records/agreement'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { DayInput } from '@almanac/ui/day-input'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { everyWords, USUAL_EVERY } from '@/client/agreements/agreement-words'
import { PriceFields, usePrice } from '@/client/agreements/price-line'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'

type Props = { siteId: string; softeners: readonly SiteSoftener[]; onClose: () => void }

const upper = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** What comes again here: visits, salt, rent. */
export function AddAgreement({ siteId, softeners, onClose }: Props) {
  const { api } = useSession()
  const only = softeners.length === 1 ? softeners[0]?.id : undefined
  const { values, field } = useFields(() => ({
    ...{ kind: 'visits', softenerId: only ?? '', every: everyWords({ count: 1, unit: 'year' }), firstDay: '', untilDay: '', notes: '' },
  }))
  const price = usePrice(null)
  const add = useCommand(api.agreements.add.mutationOptions(), { onDone: onClose })
  const send = () => {
    const read = price.read()
    const every = USUAL_EVERY.find((one) => everyWords(one) === values.every)
    if (read === null || !every) return
    const { softenerId, firstDay, untilDay, notes } = values
    const kind = oneOf(agreementKinds, values.kind) ?? 'visits'
    add.send({ siteId, softenerId: softenerId || null, kind, every, firstDay, untilDay: untilDay || null, price: read, notes })
  }
  return (
    <FormDialog
      title="Add an agreement"
      lead="Rounds lists it when it comes due, and you make it a job there. Nothing before today is asked for."
      onClose={onClose}
      onSubmit={send}
      busy={add.isPending}
      error={add.error}
      saveLabel="Add agreement"
    >
      <Select label="Kind" choices={choicesOf(agreementKinds, agreementKindWords)} {...field('kind')} />
      {softeners.length > 0 ? (
        <Select
          label="Softener"
          none="all here"
          choices={softeners.map((one) => ({ value: one.id, label: one.label }))}
          {...field('softenerId')}
        />
      ) : null}
      <Select
        label="How often"
        choices={USUAL_EVERY.map((one) => ({ value: everyWords(one), label: upper(everyWords(one)) }))}
        {...field('every')}
      />
      <DayInput label="First due" required {...field('firstDay')} />
      <DayInput label="Agreed until" hint="Leave blank for no end" min={values.firstDay || undefined} {...field('untilDay')} />
      <PriceFields price={price} />
      <TextInput label="Notes for the job" hint="As “salt goes in the shed”" maxLength={1000} {...field('notes')} />
    </FormDialog>
  )
}
