'use client'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
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
  const words = useWords('water')
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
        title={words('title')}
        lead={words('lead')}
        actions={mayChange ? <Button onClick={() => setAdding(true)}>{words('add')}</Button> : undefined}
      />
      {supplies.error ? <Problem happened={readFailure(supplies.error).message} onRetry={() => void supplies.refetch()} /> : null}
      {supplies.isPending ? <Skeleton lines={8} label={words('loading')} /> : null}
      {supplies.isSuccess ? (
        <DataTable
          caption={words('supplies')}
          rows={rows}
          rowKey={(row) => row.id}
          rowHref={(row) => `/water/${row.id}`}
          link={Link}
          columns={[
            { key: 'name', head: words('supply'), phone: 'title', cell: (row) => <span className="font-semibold">{row.name}</span> },
            { key: 'kind', head: words('kind'), cell: (row) => words(row.kind === 'town' ? 'kind/town' : 'kind/private-well') },
            { key: 'sites', head: words('sites'), align: 'right', cell: (row) => showWhole(row.sites, display) },
            {
              key: 'disinfectant',
              head: words('disinfectantNow'),
              cell: (row) => (row.present ? periodWords(row.present, display, words) : words('notKnown')),
            },
            {
              key: 'hardness',
              head: words('hardness'),
              cell: (row) => (row.present ? (hardnessWords(row.present, display, words) ?? words('notKnown')) : words('notKnown')),
            },
            { key: 'iron', head: words('iron'), cell: (row) => mgL(row.present?.ironMgL ?? null, display) ?? '–' },
          ]}
          empty={<Empty title={words('none')}>{words('noneLead')}</Empty>}
        />
      ) : null}
      {supplies.hasNextPage ? <Pager onNext={() => void supplies.fetchNextPage()} busy={supplies.isFetchingNextPage} /> : null}
      <AddSupply open={adding} onClose={() => setAdding(false)} />
    </>
  )
}
