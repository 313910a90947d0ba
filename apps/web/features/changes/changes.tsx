'use client'
import { auditTitle } from '@almanac/records/audit-words'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatInstant } from '@almanac/units/format-clock'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { changesWords, reasonWords } from './change-words.ts'

/** Who changed what, newest first: in the company, or at one site. */
export function Changes({ siteId }: { siteId: string | undefined }) {
  const display = useDisplay()
  const { api } = useSession()
  const list = useInfiniteQuery(
    api.audit.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 50, cursor, siteId }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = list.data?.pages.flatMap((one) => one.rows) ?? []
  const label = siteId ? rows.find((row) => row.site?.id === siteId)?.site?.label : undefined
  return (
    <>
      <PageHead
        title={siteId ? `Changes at ${label ?? 'this site'}` : 'Changes'}
        lead="Who changed what, and when. Names, addresses, phone numbers and notes are not kept here, only that they changed."
        above={
          siteId ? (
            <>
              <TextLink href={`/sites/${siteId}`} link={Link}>
                {label ?? 'Site'}
              </TextLink>
              <span className="text-soft"> · </span>
              <TextLink href="/changes" link={Link}>
                All changes
              </TextLink>
            </>
          ) : undefined
        }
      />
      {list.error ? <Problem happened={readFailure(list.error).message} onRetry={() => void list.refetch()} /> : null}
      {list.isPending ? <Skeleton lines={8} label="Loading the changes" /> : null}
      {list.isSuccess ? (
        <DataTable
          caption="Changes"
          rows={rows}
          rowKey={(row) => row.id}
          columns={[
            { key: 'what', head: 'What', phone: 'title', cell: (row) => auditTitle(row.operation, row.entity) },
            { key: 'when', head: 'When', cell: (row) => formatInstant(row.at, display) },
            { key: 'who', head: 'Who', cell: (row) => row.who ?? 'The app' },
            {
              key: 'where',
              head: 'Site',
              cell: (row) =>
                row.site ? (
                  <TextLink href={`/sites/${row.site.id}`} link={Link}>
                    {row.site.label}
                  </TextLink>
                ) : (
                  ''
                ),
            },
            {
              key: 'how',
              head: 'Old and new',
              cell: (row) => [...changesWords(row, display), ...reasonWords(row)].join('; '),
            },
          ]}
          empty={<Empty title="No changes yet">Each change that someone makes appears here.</Empty>}
        />
      ) : null}
      {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
    </>
  )
}
