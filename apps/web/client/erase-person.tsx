'use client'
import type { Erased, ErasedCounts } from '@almanac/contract/erase'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { formatList } from '@almanac/units/format-list'
import { type ReactNode, useState } from 'react'
import { readFailure } from './failure.ts'
import { usePermission } from './providers.tsx'

type Props = {
  /** Who is erased: "Hanna Vale". */
  name: string
  /** What goes and what stays, in a sentence or two. */
  children: ReactNode
  /** What it would take; read once `onAsk` was called. */
  counts?: { data: ErasedCounts | undefined; error: unknown }
  onAsk?: () => void
  erase: { send: () => void; isPending: boolean; error: unknown; data: Erased | undefined }
  onDone: () => void
}

const some = (count: number, one: string, many: string) => (count === 0 ? null : count === 1 ? `one ${one}` : `${count} ${many}`)

/** What goes, counted before it does. */
function Counts({ counts: { contacts, messages, listLines, pictures, exports, places } }: { counts: ErasedCounts }) {
  const display = useDisplay()
  const own = [
    some(contacts, 'contact', 'contacts'),
    some(messages, 'message', 'messages'),
    some(listLines, 'line of an imported list', 'lines of imported lists'),
    some(pictures, 'photograph or signature', 'photographs and signatures'),
    some(exports, 'export', 'exports'),
    some(places, 'other place that names them', 'other places that name them'),
  ].filter((one) => one !== null)
  return own.length === 0 ? null : <p>This clears {formatList(own, display)}.</p>
}

/** Erasing somebody for good, for the owner alone: asked once more, with what goes and what stays. */
export function ErasePerson({ name, children, counts, onAsk, erase, onDone }: Props) {
  const owner = usePermission('manage:company')
  const [open, setOpen] = useState(false)
  const [sure, setSure] = useState(false)
  if (!owner) return null
  return (
    <>
      <Button
        kind="quiet"
        onClick={() => {
          setOpen(true)
          onAsk?.()
        }}
      >
        Erase for good
      </Button>
      <Dialog
        open={open}
        onClose={() => (erase.data ? onDone() : setOpen(false))}
        title={erase.data ? 'Erased' : `Erase ${name}?`}
        actions={
          erase.data ? (
            <Button kind="ink" onClick={onDone}>
              Close
            </Button>
          ) : (
            <>
              <Button onClick={() => setOpen(false)}>Keep them</Button>
              <Button kind="danger" busy={erase.isPending} busyLabel="Erasing" disabled={!sure} onClick={erase.send}>
                Erase for good
              </Button>
            </>
          )
        }
      >
        {erase.data ? (
          <p>
            Nothing on record names them any more.{' '}
            {erase.data.places === 0
              ? ''
              : `They were also named in ${erase.data.places === 1 ? 'one other place' : `${erase.data.places} other places`}; those are cleared.`}
          </p>
        ) : (
          <div className="flex flex-col gap-3">
            {children}
            {counts?.data ? <Counts counts={counts.data} /> : null}
            {counts?.error ? <Problem happened={readFailure(counts.error).message} /> : null}
            <p>
              Exports made before are removed too. We can’t reach backups and papers outside this app, or notes that use only a nickname.
            </p>
            {erase.error ? <Problem happened={readFailure(erase.error).message} /> : null}
            <Checkbox label="I know this can’t be undone" checked={sure} onChange={(event) => setSure(event.target.checked)} />
          </div>
        )}
      </Dialog>
    </>
  )
}
