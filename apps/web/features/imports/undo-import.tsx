import type { ImportBatchPage, ImportKept } from '@almanac/contract/imports'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { plural } from './import-words.tsx'

/** Why things stay, a line a reason and site. */
export function KeptReasons({ examples }: { examples: readonly ImportKept[] }) {
  return (
    <ul className="mt-2 list-disc pl-5">
      {[...new Map(examples.map((one) => [`${one.kind} ${one.siteId} ${one.why}`, one]))].map(([key, one]) => (
        <li key={key}>
          {one.why}{' '}
          {one.siteId ? (
            <TextLink href={`/sites/${one.siteId}`} link={Link}>
              Site
            </TextLink>
          ) : null}
        </li>
      ))}
    </ul>
  )
}

/** Says what undoing an import archives and restores, and what stays and why, before it is done. */
export function UndoImport({ batch, onClose }: { batch: ImportBatchPage; onClose: () => void }) {
  const display = useDisplay()
  const { api } = useSession()
  const before = useQuery(api.imports.beforeUndo.queryOptions({ input: { batchId: batch.id } }))
  const undo = useCommand(api.imports.undo.mutationOptions(), { onDone: onClose })
  const failed = before.error ?? undo.error
  const { data } = before
  return (
    <Dialog
      open
      onClose={onClose}
      title="Undo this import"
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button
            kind="danger"
            busy={undo.isPending}
            busyLabel="Undoing"
            onClick={() => undo.send({ batchId: batch.id, version: batch.version })}
          >
            Undo it
          </Button>
        </>
      }
    >
      <p>
        Customers, sites and softeners it added are archived, unless somebody edited them or booked work there since. Values it changed are
        restored, unless somebody edited them since.
      </p>
      {failed ? <Problem happened={readFailure(failed).message} /> : null}
      {before.isPending ? <Skeleton lines={3} label="Counting what would be undone" /> : null}
      {data ? (
        <p className="mt-3 font-medium">
          As of now: {showWhole(data.archived, display)} archived, {plural(data.restored, 'value', 'values', display)} restored.{' '}
          {data.kept === 0 ? 'Nothing from it stays.' : `${showWhole(data.kept, display)} stay:`}
        </p>
      ) : null}
      {data ? <KeptReasons examples={data.keptExamples} /> : null}
    </Dialog>
  )
}
