'use client'
import { Checkbox } from '@almanac/ui/checkbox'
import { DayInput } from '@almanac/ui/day-input'
import { Notice } from '@almanac/ui/notice'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useDayField } from '@/client/use-today'

export type AwayOf = { of: 'person' | 'vehicle'; subjectId: string; name: string }

/** Writes down days off, or off the road. */
export function WriteAway({ of: { of, subjectId, name }, onClose }: { of: AwayOf; onClose: () => void }) {
  const { api } = useSession()
  const first = useDayField()
  const last = useDayField()
  const { values, field } = useFields(() => ({ word: '' }))
  const [open, setOpen] = useState(false)
  const add = useCommand(api.crews.addAbsence.mutationOptions(), { onDone: onClose })
  const failure = add.error ? readFailure(add.error) : null
  const asked = failure?.detail.confirm !== undefined
  const body = { of, subjectId, fromDay: first.day, untilDay: open ? null : last.day, word: values.word.trim() || null }
  // The days that were asked about: others are asked about afresh.
  const days = `${body.fromDay} ${body.untilDay}`
  const [sent, setSent] = useState('')
  return (
    <FormDialog
      title={of === 'person' ? `Days off: ${name}` : `Out of service: ${name}`}
      lead="Day sheets on those days stay as they are and show it; plans leave those days out."
      onClose={onClose}
      onSubmit={() => {
        setSent(days)
        add.send({ ...body, confirmed: asked && sent === days })
      }}
      busy={add.isPending}
      error={asked ? null : add.error}
      saveLabel={asked && sent === days ? 'Save anyway' : undefined}
    >
      {asked && failure ? <Notice kind="mind">{failure.message}</Notice> : null}
      <DayInput label="First day" required {...first.field} />
      {open ? null : <DayInput label="Last day" required min={first.day} {...last.field} />}
      <Checkbox label="Until further notice" checked={open} onChange={(event) => setOpen(event.target.checked)} />
      <TextInput
        label="Reason (optional)"
        hint={of === 'person' ? 'Holiday, training. Everyone who plans reads it.' : 'Brakes, inspection'}
        maxLength={60}
        {...field('word')}
      />
    </FormDialog>
  )
}
