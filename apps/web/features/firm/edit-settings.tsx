'use client'
import type { Settings } from '@almanac/contract/firm'
import { TextInput } from '@almanac/ui/text-input'
import { TimeInput } from '@almanac/ui/time-input'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { figureName, figureWords } from '@/client/figure-words'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useSayAmount } from '@/client/use-say-amount'
import type { Texts } from './figure-amounts.ts'
import { FigureField } from './figure-field.tsx'
import {
  CLOCKS,
  COSTS,
  DAYS,
  DETAILS,
  REMINDERS,
  readSettingTexts,
  type SettingName,
  settingFields,
  settingTexts,
} from './settings-form.ts'

type Props = { settings: Settings; names: readonly SettingName[]; onClose: () => void }

const TITLES: [names: readonly SettingName[], title: string][] = [
  [COSTS, 'Prices and costs'],
  [DAYS, 'Hours, yard and crews'],
  [REMINDERS, 'Reminders'],
]

/** Changes some of the firm's settings; the others are sent as they stand. */
export function EditSettings({ settings, names, onClose }: Props) {
  const { api, me } = useSession()
  const router = useRouter()
  const { currency, locale } = me.company
  const [seen] = useState(settings)
  const [texts, setTexts] = useState<Texts>(() => settingTexts(settings, names, currency, locale))
  const [errors, setErrors] = useState<Texts>({})
  const say = useSayAmount()
  const [note, setNote] = useState('')
  const change = useCommand(api.firm.changeSettings.mutationOptions(), {
    onDone: () => {
      onClose()
      // What the page was loaded with says how it writes; the layout reads it again.
      if (names === DETAILS) router.refresh()
    },
  })
  const send = (over: Settings) => {
    const { values, errors: wrong } = readSettingTexts(over, names, texts, { currency, locale, why: note, say })
    setErrors(wrong)
    if (Object.keys(wrong).length === 0) change.send({ version: over.version, ...values, note: note.trim() || null })
  }
  const set = (name: string) => (text: string) => setTexts((now) => ({ ...now, [name]: text }))
  return (
    <FormDialog
      title={TITLES.find(([those]) => those === names)?.[1] ?? 'Company details'}
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(settings)}
      busy={change.isPending}
      error={change.error}
      names={Object.fromEntries([...COSTS, ...DAYS, ...REMINDERS, ...DETAILS].map((name) => [name, figureName(name, me.company)]))}
      show={(name, value) => figureWords(name, value, me.company)}
    >
      {settingFields(names, (name) => figureName(name, me.company), currency, seen.locale).map((field) =>
        (CLOCKS as readonly string[]).includes(field.name) ? (
          <TimeInput
            key={field.name}
            label={field.label}
            hint={field.hint}
            required
            value={texts[field.name]}
            onChange={(event) => set(field.name)(event.target.value)}
          />
        ) : (
          <FigureField key={field.name} field={field} text={texts[field.name] ?? ''} error={errors[field.name]} onText={set(field.name)} />
        ),
      )}
      <TextInput label="Why" hint="Kept in the history" maxLength={300} value={note} onChange={(event) => setNote(event.target.value)} />
    </FormDialog>
  )
}
