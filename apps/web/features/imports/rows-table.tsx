'use client'
import type { ImportRowView } from '@almanac/contract/imports'
import type { RowProblemKind } from '@almanac/records/import-state'
import { DataTable } from '@almanac/ui/data-table'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'

const line = { key: 'line', head: 'Line', width: '4rem', cell: (row: ImportRowView) => row.line }
const dim = (text: string | undefined) => (text ? text : <span className="text-soft">blank</span>)

const UNDERSTOOD = [
  {
    key: 'customer',
    head: 'Customer',
    phone: 'title' as const,
    cell: (row: ImportRowView) => row.understood?.customer ?? 'left out',
  },
  line,
  { key: 'site', head: 'Site', cell: (row: ImportRowView) => dim(row.understood?.site) },
  { key: 'tank', head: 'Tank', cell: (row: ImportRowView) => dim(row.understood?.tank) },
  { key: 'began', head: 'Resin installed', cell: (row: ImportRowView) => dim(row.understood?.began) },
  { key: 'seen', head: 'Last seen', cell: (row: ImportRowView) => dim(row.understood?.lastSeen) },
  { key: 'water', head: 'Water', cell: (row: ImportRowView) => dim(row.understood?.water) },
  { key: 'contact', head: 'Contact', cell: (row: ImportRowView) => dim(row.understood?.contact) },
]

const each = (texts: readonly string[]) =>
  texts.map((text) => (
    <span key={text} className="block break-words">
      {text || 'empty'}
    </span>
  ))

const BECAME: Readonly<Record<RowProblemKind, string>> = { 'left-out': 'row left out', 'left-empty': 'cell left empty', decide: 'decide' }

const PROBLEM = [
  line,
  { key: 'customer', head: 'Customer', cell: (row: ImportRowView) => row.understood?.customer ?? dim(undefined) },
  {
    key: 'became',
    head: 'What happens',
    cell: (row: ImportRowView) => <span>{each([...new Set(row.problems.map((one) => BECAME[one.kind]))])}</span>,
  },
  { key: 'column', head: 'Column', cell: (row: ImportRowView) => <span>{each(row.problems.map((one) => one.column))}</span> },
  { key: 'value', head: 'Value', cell: (row: ImportRowView) => <span>{each(row.problems.map((one) => one.value))}</span> },
  { key: 'reason', head: 'Reason', width: '40%', cell: (row: ImportRowView) => <span>{each(row.problems.map((one) => one.reason))}</span> },
]

const NOTED = [
  line,
  { key: 'notes', head: 'Assumed or kept', cell: (row: ImportRowView) => <span>{each(row.notes)}</span> },
  {
    key: 'site',
    head: <span className="sr-only">Site</span>,
    cell: (row: ImportRowView) =>
      row.siteId ? (
        <TextLink href={`/sites/${row.siteId}`} link={Link}>
          Site
        </TextLink>
      ) : null,
  },
]

const CHANGED = [
  line,
  { key: 'customer', head: 'Customer', phone: 'title' as const, cell: (row: ImportRowView) => row.understood?.customer ?? dim(undefined) },
  {
    key: 'changes',
    head: 'Old → new',
    width: '60%',
    cell: (row: ImportRowView) => (
      <span>{each(row.changes.map(({ what, from, to }) => `${what}: ${from || 'blank'} → ${to || 'blank'}`))}</span>
    ),
  },
]

const SHOWN = {
  all: { caption: 'Rows as read', columns: UNDERSTOOD },
  problem: { caption: 'Rows to look at', columns: PROBLEM },
  noted: { caption: 'Rows with notes', columns: NOTED },
  changed: { caption: 'Rows that change', columns: CHANGED },
} as const

/** Rows of an import: as they are understood, those to look at with the reason, those something was assumed in, or those that change what is on record. */
export function RowsTable({ batchId, only, first = 10 }: { batchId: string; only: keyof typeof SHOWN; first?: number }) {
  const { api } = useSession()
  const rows = useInfiniteQuery(
    api.imports.rows.infiniteOptions({
      input: (cursor: string | undefined) => ({ batchId, only, limit: first, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  if (rows.isPending) return <Skeleton lines={4} label="Loading the rows" />
  if (rows.error) return <Problem happened={readFailure(rows.error).message} onRetry={() => void rows.refetch()} />
  return (
    <>
      <DataTable
        caption={SHOWN[only].caption}
        rows={rows.data.pages.flatMap((one) => one.rows)}
        rowKey={(row) => row.id}
        columns={SHOWN[only].columns}
      />
      {rows.hasNextPage ? <Pager onNext={() => void rows.fetchNextPage()} busy={rows.isFetchingNextPage} /> : null}
    </>
  )
}
