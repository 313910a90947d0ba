'use client'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { showWhole } from '@almanac/units/format-number'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { AddSupply } from './add-supply.tsx'
import { hardnessWords, mgL, periodWords } from './water-words.ts'

/** The waters the firm's softeners run on. */
export function Supplies() {
  const { api, me } = useSession()
  const mayChange = usePermission('change:water')
  const [adding, setAdding] = useState(false)
  const supplies = useInfiniteQuery(
    api.water.supplies.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 100, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = supplies.data?.pages.flatMap((one) => one.rows) ?? []
  const display = me.company
  return (
    <>
      <PageHead
        title="Water"
        lead="Water quality of each supply, and since when. A dated change here moves the forecast of every bed on that water."
        actions={mayChange ? <Button onClick={() => setAdding(true)}>Add a supply</Button> : undefined}
      />
      {supplies.error ? <Problem happened={readFailure(supplies.error).message} onRetry={() => void supplies.refetch()} /> : null}
      {supplies.isPending ? <Skeleton lines={8} label="Loading the supplies" /> : null}
      {supplies.isSuccess ? (
        <DataTable
          caption="Water supplies"
          rows={rows}
          rowKey={(row) => row.id}
          rowHref={(row) => `/water/${row.id}`}
          link={Link}
          columns={[
            { key: 'name', head: 'Supply', phone: 'title', cell: (row) => <span className="font-semibold">{row.name}</span> },
            { key: 'kind', head: 'Kind', cell: (row) => (row.kind === 'town' ? 'town' : 'private well') },
            { key: 'sites', head: 'Sites', align: 'right', cell: (row) => showWhole(row.sites, display) },
            { key: 'disinfectant', head: 'Disinfectant now', cell: (row) => (row.present ? periodWords(row.present) : 'not known') },
            {
              key: 'hardness',
              head: 'Hardness',
              cell: (row) => (row.present ? (hardnessWords(row.present, display) ?? 'not known') : 'not known'),
            },
            { key: 'iron', head: 'Iron', cell: (row) => mgL(row.present?.ironMgL ?? null) ?? '–' },
          ]}
          empty={<Empty title="No water supplies yet">An import adds them by name, or add the town’s supply here.</Empty>}
        />
      ) : null}
      {supplies.hasNextPage ? <Pager onNext={() => void supplies.fetchNextPage()} busy={supplies.isFetchingNextPage} /> : null}
      <AddSupply open={adding} onClose={() => setAdding(false)} />
    </>
  )
}
