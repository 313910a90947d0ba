'use client'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { useWords } from '@almanac/words/use-words'
import { type FormEvent, type ReactNode, useId } from 'react'
import { ConflictNote, type ConflictNoteProps } from './conflict-note.tsx'

type Props = {
  title: string
  lead?: ReactNode
  onClose: () => void
  onSubmit: () => void
  busy: boolean
  error: unknown
  saveLabel?: string
  /** Names of the sent values, for a change made meanwhile by someone else. */
  names?: ConflictNoteProps['names']
  show?: ConflictNoteProps['show']
  /** Send again over the present version; without it a conflict can only be left. */
  onKeepMine?: () => void
  children: ReactNode
}

/** A form along the margin of the page it changes, with its save button always in sight. */
export function FormDialog({ title, lead, onClose, onSubmit, busy, error, saveLabel, names = {}, show, onKeepMine, children }: Props) {
  const id = useId()
  const words = useWords('saving')
  const submit = (event: FormEvent) => {
    event.preventDefault()
    onSubmit()
  }
  return (
    <Dialog
      open
      onClose={onClose}
      title={title}
      place="margin"
      actions={
        <>
          <Button onClick={onClose}>{words('cancel')}</Button>
          <Button kind="ink" type="submit" form={id} busy={busy} busyLabel={words('saving')}>
            {saveLabel ?? words('save')}
          </Button>
        </>
      }
    >
      {lead ? <p className="mb-4 text-soft">{lead}</p> : null}
      <ConflictNote error={error} names={names} show={show} busy={busy} onKeepMine={onKeepMine ?? onSubmit} onTakeTheirs={onClose} />
      <form id={id} onSubmit={submit} className="flex flex-col gap-4">
        {children}
      </form>
    </Dialog>
  )
}
