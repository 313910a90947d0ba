'use client'
import type { FigureRow, FigureValue } from '@almanac/contract/firm'
import { tankKey } from '@almanac/softener/firm/read-tank'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { dialogTitle, figureWords } from '@/client/figure-words'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useSayAmount } from '@/client/use-say-amount'
import { type Texts, Unreadable } from './figure-amounts.ts'
import { FigureField } from './figure-field.tsx'
import { formOf } from './figure-forms.ts'

type Props = { figureKey: string; value: unknown; row: FigureRow | undefined; onClose: () => void }

/** The firm's own figure in the place of the usual one, with the reason. `tank:new` and a valve without a value are added. */
export function EditFigure({ figureKey, value, row, onClose }: Props) {
  const { api, me } = useSession()
  const { unitSystem: system, currency, locale } = me.company
  const reader = { system, currency, locale }
  const [form] = useState(() => formOf(figureKey, value, reader))
  const [seen] = useState(row?.version ?? 0)
  const [texts, setTexts] = useState<Texts>(form.texts)
  const say = useSayAmount()
  const [note, setNote] = useState('')
  const [errors, setErrors] = useState<Texts>({})
  const change = useCommand(api.firm.changeFigure.mutationOptions(), { onDone: onClose })
  const read = (): FigureValue | null => {
    try {
      return form.read(texts, note)
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error
      setErrors({ [error.field]: error.said ? say(error.said) : error.message })
      return null
    }
  }
  const send = (version: number) => {
    setErrors({})
    const next = read()
    if (next === null) return
    const key = figureKey === 'tank:new' ? tankKey(next as { diameterIn: number; heightIn: number }) : figureKey
    change.send({ key, version, value: next, note: note.trim() || null })
  }
  const name = dialogTitle(figureKey, value, me.company)
  return (
    <FormDialog
      title={name}
      lead="Takes effect at once, in every kit, drawing and plan."
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(row?.version ?? 0)}
      busy={change.isPending}
      error={change.error}
      names={{ value: 'Figure', note: 'Why' }}
      show={(field, shown) =>
        field === 'value' ? (shown === null ? 'the default' : figureWords(figureKey, shown, me.company)) : String(shown ?? 'nothing')
      }
    >
      {form.fields.map((field) => (
        <FigureField
          key={field.name}
          field={field}
          text={texts[field.name] ?? ''}
          error={errors[field.name]}
          onText={(text) => setTexts((now) => ({ ...now, [field.name]: text }))}
        />
      ))}
      <TextInput
        label="Why"
        hint="Kept in the history. For example: counted on our own beds"
        maxLength={300}
        value={note}
        onChange={(event) => setNote(event.target.value)}
      />
    </FormDialog>
  )
}
