import type { MergingRow } from '@almanac/contract/merging'
import { mergeableWords } from '@almanac/records/merging'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { formatInstant } from '@almanac/units/format-clock'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { UndoMerging } from './undo-merging.tsx'

const ERASED = 'erased since'

function Undo({ row }: { row: MergingRow }) {
  const [asking, setAsking] = useState(false)
  if (row.undone) return <span className="text-soft">undone</span>
  return (
    <>
      <Button onClick={() => setAsking(true)}>
        Undo<span className="sr-only"> merging {row.gone ?? ERASED}</span>
      </Button>
      {asking ? <UndoMerging row={row} onClose={() => setAsking(false)} /> : null}
    </>
  )
}

/** What was merged, and the way back. */
export function MergedList() {
  const display = useDisplay()
  const { api } = useSession()
  const list = useInfiniteQuery(
    api.merging.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 20, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = list.data?.pages.flatMap((one) => one.rows) ?? []
  if (list.error) return <Problem happened={readFailure(list.error).message} onRetry={() => void list.refetch()} />
  if (rows.length === 0) return null
  return (
    <>
      <DataTable
        caption="Merged"
        rows={rows}
        rowKey={(row) => row.id}
        columns={[
          { key: 'gone', head: 'Merged', phone: 'title', cell: (row) => row.gone ?? ERASED },
          { key: 'kept', head: 'Into', cell: (row) => row.kept ?? ERASED },
          { key: 'kind', head: 'Kind', cell: (row) => mergeableWords[row.kind] },
          { key: 'when', head: 'When', cell: (row) => formatInstant(row.at, display) },
          { key: 'undo', head: <span className="sr-only">Undo</span>, cell: (row) => <Undo row={row} /> },
        ]}
      />
      {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
    </>
  )
}
