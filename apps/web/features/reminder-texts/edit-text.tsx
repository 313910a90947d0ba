'use client'
import type { ReminderText } from '@almanac/contract/own-texts'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { useToast } from '@almanac/ui/toast'
import { useState } from 'react'
import { ConflictNote } from '@/client/conflict-note'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { TextPreview } from './text-preview.tsx'
import { useTextPreview } from './use-text-preview.ts'

/** A text being written, with how it would read beside it. */
export function EditText({ text }: { text: ReminderText }) {
  const { api } = useSession()
  const owner = usePermission('manage:company')
  const showToast = useToast()
  const { channel, language, version } = text
  const stored = text.own ?? text.standard
  const [typed, setTyped] = useState(stored)
  const [about, setAbout] = useState<{ of: 'bed' | 'site'; id: string; words: string } | null>(null)
  const preview = useTextPreview({ channel, language, ...typed }, about)
  const save = useCommand(api.reminders.saveText.mutationOptions(), { onDone: () => showToast({ text: 'Text saved' }) })
  const reset = useCommand(api.reminders.standardText.mutationOptions(), { onDone: () => showToast({ text: 'Back to the standard text' }) })
  const wrong = preview.data?.wrong ?? null
  const send = () => save.send({ channel, language, version, ...typed })
  const changed = typed.subject !== stored.subject || typed.body !== stored.body
  return (
    <div className="grid gap-x-10 gap-y-8 lg:grid-cols-2">
      <form
        className="flex min-w-0 flex-col gap-4"
        onSubmit={(event) => {
          event.preventDefault()
          send()
        }}
      >
        <p className="text-soft">{text.own ? 'Your own text.' : 'The standard text. Change it, and yours is used from then on.'}</p>
        <ConflictNote
          error={save.error ?? reset.error}
          names={{}}
          busy={save.isPending}
          onKeepMine={send}
          onTakeTheirs={() => setTyped(stored)}
        />
        {channel === 'text' ? null : (
          <TextInput
            label="Subject"
            maxLength={300}
            readOnly={!owner}
            value={typed.subject}
            error={wrong?.field === 'subject' ? wrong.sentence : undefined}
            onChange={(event) => setTyped((now) => ({ ...now, subject: event.target.value }))}
          />
        )}
        <TextArea
          label="Text"
          rows={14}
          maxLength={4000}
          readOnly={!owner}
          value={typed.body}
          error={wrong?.field === 'body' ? wrong.sentence : undefined}
          onChange={(event) => setTyped((now) => ({ ...now, body: event.target.value }))}
        />
        {owner ? (
          <p className="flex flex-wrap gap-3">
            <Button kind="ink" type="submit" disabled={!changed || wrong !== null} busy={save.isPending} busyLabel="Saving">
              Save text
            </Button>
            {changed ? <Button onClick={() => setTyped(stored)}>Undo changes</Button> : null}
            {text.own ? (
              <Button busy={reset.isPending} onClick={() => reset.send({ channel, language, version })}>
                Use standard text
              </Button>
            ) : null}
          </p>
        ) : null}
        <details>
          <summary className="font-medium">Names you can use</summary>
          <div className="mt-3">
            <DefinitionList facts={text.names.map(({ name, is }) => ({ key: name, name: `{{ ${name} }}`, value: is }))} />
            <p className="mt-3 text-small text-soft">
              A choice: {'{% if phone %}Call {{ phone }}.{% else %}Call us.{% endif %}'} Months, sizes and the reason follow the text’s
              language and your units.
            </p>
          </div>
        </details>
      </form>
      <TextPreview preview={preview} about={about} onAbout={setAbout} />
    </div>
  )
}
