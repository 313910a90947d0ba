'use client'
import { type ArchiveReason, archiveReasons, archiveReasonWords } from '@almanac/records/archive-reason'
import { choicesOf, oneOf } from '@almanac/records/choices'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { useState } from 'react'
import { readFailure } from '@/client/failure'

type Props = {
  /** "Archive softener". */
  label: string
  /** What leaves the lists with it. */
  consequence: string
  command: { send: (reason: ArchiveReason) => void; isPending: boolean; error: unknown }
}

/** Archiving something, for a reason; it can be brought back from the archive. */
export function ArchiveThing({ label, consequence, command }: Props) {
  const [open, setOpen] = useState(false)
  const [reason, setReason] = useState<string>('')
  const chosen = oneOf(archiveReasons, reason)
  return (
    <>
      <Button kind="quiet" onClick={() => setOpen(true)}>
        {label}
      </Button>
      <Dialog
        open={open}
        onClose={() => setOpen(false)}
        title={`${label}?`}
        actions={
          <>
            <Button onClick={() => setOpen(false)}>Keep it</Button>
            <Button
              kind="danger"
              busy={command.isPending}
              busyLabel="Archiving"
              disabled={!chosen}
              onClick={() => chosen && command.send(chosen)}
            >
              {label}
            </Button>
          </>
        }
      >
        <div className="flex flex-col gap-4">
          <p>{consequence} The history is kept, and you can bring it back from the Archive page.</p>
          <Select
            label="Reason"
            none="choose one"
            choices={choicesOf(archiveReasons, archiveReasonWords)}
            value={reason}
            onChange={(event) => setReason(event.target.value)}
          />
          {command.error ? <Problem happened={readFailure(command.error).message} /> : null}
        </div>
      </Dialog>
    </>
  )
}
