'use client'
import { Checkbox } from '@almanac/ui/checkbox'
import { DayInput } from '@almanac/ui/day-input'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'

export type AwayOf = { of: 'person' | 'vehicle'; subjectId: string; name: string }

/** Writes down days off, or off the road. */
export function WriteAway({ of: { of, subjectId, name }, onClose }: { of: AwayOf; onClose: () => void }) {
  const { api, me } = useSession()
  const { values, field } = useFields(() => ({ fromDay: me.today, untilDay: me.today, word: '' }))
  const [open, setOpen] = useState(false)
  const add = useCommand(api.crews.addAbsence.mutationOptions(), { onDone: onClose })
  return (
    <FormDialog
      title={of === 'person' ? `Days off: ${name}` : `Off the road: ${name}`}
      lead="Day sheets that stand in those days stay as they are and say so; plans leave them out."
      onClose={onClose}
      onSubmit={() =>
        add.send({ of, subjectId, fromDay: values.fromDay, untilDay: open ? null : values.untilDay, word: values.word.trim() || null })
      }
      busy={add.isPending}
      error={add.error}
    >
      <DayInput label="First day" required {...field('fromDay')} />
      {open ? null : <DayInput label="Last day" required min={values.fromDay} {...field('untilDay')} />}
      <Checkbox label="Until further notice" checked={open} onChange={(event) => setOpen(event.target.checked)} />
      <TextInput
        label="A word for it"
        hint={of === 'person' ? 'Holiday, training. Everyone who plans reads it.' : 'Brakes, inspection'}
        maxLength={60}
        {...field('word')}
      />
    </FormDialog>
  )
}
