import type { MergingRow, Moving } from '@almanac/contract/merging'
import { movedKindWords } from '@almanac/records/merging'
import { Button } from '@almanac/ui/button'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const ERASED = 'erased since'

/** "2 contacts (Next door, Bo Dow)". */
function movingWords({ kind, count, names }: Moving): string {
  const [one, more] = movedKindWords[kind]
  const named = names.length === 0 ? '' : ` (${names.join(', ')}${names.length < count ? ' …' : ''})`
  return `${count} ${count === 1 ? one : more}${named}`
}

function Part({ title, rows }: { title: string; rows: readonly Moving[] }) {
  if (rows.length === 0) return null
  return (
    <>
      <h3 className="mt-3 font-semibold">{title}</h3>
      <ul className="list-disc pl-5">
        {rows.map((row) => (
          <li key={row.kind}>{movingWords(row)}</li>
        ))}
      </ul>
    </>
  )
}

/** Says what undoing a merging brings back, what stays and why, before it is done. */
export function UndoMerging({ row, onClose }: { row: MergingRow; onClose: () => void }) {
  const { api } = useSession()
  const [gone, kept] = [row.gone ?? ERASED, row.kept ?? ERASED]
  const before = useQuery(api.merging.beforeUndo.queryOptions({ input: { mergingId: row.id } }))
  const undo = useCommand(api.merging.undo.mutationOptions(), { onDone: onClose })
  const { data } = before
  const failed = before.error ?? undo.error
  return (
    <Dialog
      open
      onClose={onClose}
      title={`Undo merging ${gone}?`}
      actions={
        <>
          <Button onClick={onClose}>Keep merged</Button>
          {data && data.refused === null ? (
            <Button kind="ink" busy={undo.isPending} onClick={() => undo.send({ mergingId: row.id, version: row.version })}>
              Undo merge
            </Button>
          ) : null}
        </>
      }
    >
      {failed ? <Problem happened={readFailure(failed).message} /> : null}
      {before.isPending ? <Skeleton lines={4} label="Loading what would go back" /> : null}
      {data?.refused ? <Problem happened={`This can’t be undone. ${data.refused}`} /> : null}
      {data && data.refused === null ? (
        <>
          {data.back.length === 0 ? <p>Nothing goes back but {gone} itself.</p> : null}
          <Part title={`Goes back to ${gone}`} rows={data.back} />
          <Part title={`Stays with ${kept}, because it came later`} rows={data.stays} />
          <Part title="Moved on or removed since, so it doesn’t come back" rows={data.elsewhere} />
        </>
      ) : null}
    </Dialog>
  )
}
