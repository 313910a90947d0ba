'use client'
import type { FigureRow } from '@almanac/contract/firm'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { figureName, figureWords } from '@/client/figure-words'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { type FigureLine, putBackWord } from './use-figures.ts'

/** Puts a figure back to the usual one; the firm's own stays in the history. */
export function PutBack({ line, row, onClose }: { line: FigureLine; row: FigureRow; onClose: () => void }) {
  const { api, me } = useSession()
  const display = me.company
  const [seen] = useState(row.version)
  const [note, setNote] = useState('')
  const reset = useCommand(api.firm.resetFigure.mutationOptions(), { onDone: onClose })
  const send = (version: number) => reset.send({ key: line.key, version, note: note.trim() || null })
  return (
    <FormDialog
      title={figureName(line.key, display, line.value)}
      lead={
        line.usual === null
          ? 'There’s no default to replace it. Your value stays in the history.'
          : `The default replaces it: ${figureWords(line.key, line.usual, display)}. Yours stays in the history.`
      }
      onClose={onClose}
      onSubmit={() => send(seen)}
      onKeepMine={() => send(row.version)}
      busy={reset.isPending}
      error={reset.error}
      saveLabel={putBackWord(line)}
      names={{ value: 'Figure' }}
      show={(_, shown) => (shown === null ? 'the default' : figureWords(line.key, shown, display))}
    >
      <TextInput label="Why" maxLength={300} value={note} onChange={(event) => setNote(event.target.value)} />
    </FormDialog>
  )
}
