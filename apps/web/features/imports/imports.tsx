'use client'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatInstant } from '@almanac/units/format-clock'
import { showWhole } from '@almanac/units/format-number'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { BringIn } from './bring-in.tsx'
import { outcomeWords, StateWord } from './import-words.tsx'

/** The files the firm brought in, newest first. */
export function Imports() {
  const display = useDisplay()
  const { api } = useSession()
  const imports = useInfiniteQuery(
    api.imports.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = imports.data?.pages.flatMap((one) => one.rows) ?? []
  return (
    <>
      <PageHead
        title="Import"
        lead="Import your customer list as it is, CSV or XLSX. You see how each column and row was read before anything changes, and you can undo all of it later."
        actions={rows.length > 0 ? <BringIn /> : undefined}
      />
      {imports.error ? <Problem happened={readFailure(imports.error).message} onRetry={() => void imports.refetch()} /> : null}
      {imports.isPending ? <Skeleton lines={6} label="Loading the imports" /> : null}
      {imports.isSuccess ? (
        <DataTable
          caption="Imports"
          rows={rows}
          rowKey={(row) => row.id}
          rowHref={(row) => `/imports/${row.id}`}
          link={Link}
          columns={[
            { key: 'file', head: 'File', phone: 'title', cell: (row) => row.fileName },
            { key: 'when', head: 'Imported', cell: (row) => formatInstant(row.createdAt, display) },
            { key: 'rows', head: 'Rows', align: 'right', cell: (row) => showWhole(row.totalRows, display) },
            { key: 'state', head: 'State', cell: (row) => <StateWord state={row.state} /> },
            { key: 'counts', head: 'Rows by outcome', cell: (row) => outcomeWords(row, display) },
          ]}
          empty={
            <Empty title="No file imported yet" action={<BringIn />}>
              Any list of customers and their softeners works: titles above the header, mixed units and notes are fine. Up to 50,000 rows
              and 20 MB.
            </Empty>
          }
        />
      ) : null}
      {imports.hasNextPage ? <Pager onNext={() => void imports.fetchNextPage()} busy={imports.isFetchingNextPage} /> : null}
    </>
  )
}
