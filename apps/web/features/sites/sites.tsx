'use client'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { SearchBox } from '@almanac/ui/search-box'
import { Skeleton } from '@almanac/ui/skeleton'
import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { FirstRecords } from '@/client/first-records'
import { usePermission, useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { siteColumns } from './site-columns.tsx'
import { useSearch } from './use-search.ts'

/** Every site of the firm, found by any part of a name, street, phone or tank. */
export function Sites() {
  const firm = useRebedFirm()
  const { api } = useSession()
  const today = useToday()
  const mayChange = usePermission('change:site')
  const { text, searched, type } = useSearch()
  const sites = useInfiniteQuery(
    api.sites.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ q: searched || undefined, limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
      placeholderData: keepPreviousData,
    }),
  )
  const rows = sites.data?.pages.flatMap((one) => one.rows) ?? []
  const failure = sites.error ? readFailure(sites.error) : null
  return (
    <>
      <PageHead
        title="Sites"
        lead="Every site, its customer, and its next due bed."
        actions={
          mayChange ? (
            <>
              <LinkButton href="/ask-next" link={Link}>
                Ask at the next call
              </LinkButton>
              <LinkButton href="/sites/new" kind="ink" link={Link}>
                Add a site
              </LinkButton>
            </>
          ) : null
        }
      />
      <SearchBox
        label="Search sites"
        placeholder="Part of a name, street, phone or tank: 10x54 orch"
        value={text}
        onChange={(event) => type(event.target.value)}
        onSubmit={(event) => event.preventDefault()}
      />
      <output aria-live="polite" className="mt-2 block min-h-6 text-small text-soft">
        {sites.isSuccess && searched && !sites.isPlaceholderData ? foundWords(rows.length, sites.hasNextPage, searched) : ''}
      </output>
      {failure ? <Problem happened={failure.message} onRetry={() => void sites.refetch()} retrying={sites.isFetching} /> : null}
      {sites.isPending ? <Skeleton lines={12} label="Loading the sites" /> : null}
      {sites.isSuccess ? (
        <DataTable
          caption="Sites"
          columns={siteColumns(today, firm)}
          rows={rows}
          rowKey={(row) => row.id}
          rowHref={(row) => `/sites/${row.id}`}
          link={Link}
          busy={sites.isPlaceholderData}
          empty={searched ? <NothingFound searched={searched} onClear={() => type('')} /> : <FirstRecords title="No sites yet" />}
        />
      ) : null}
      {sites.hasNextPage ? (
        <p className="py-4">
          <Button onClick={() => void sites.fetchNextPage()} busy={sites.isFetchingNextPage} busyLabel="Loading more">
            Show 50 more
          </Button>
        </p>
      ) : null}
    </>
  )
}

function foundWords(count: number, more: boolean, searched: string): string {
  if (more) return `More than ${count - 1} sites match “${searched}”.`
  return count === 1 ? `One site matches “${searched}”.` : `${count} sites match “${searched}”.`
}

function NothingFound({ searched, onClear }: { searched: string; onClear: () => void }) {
  return (
    <Empty title={`No site matches “${searched}”`} action={<Button onClick={onClear}>Show all sites</Button>}>
      Each word you type must begin or continue a word of the site’s name, street, town, customer, phone or tank. Try fewer letters.
    </Empty>
  )
}
