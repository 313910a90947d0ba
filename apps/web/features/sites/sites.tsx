'use client'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { SearchBox } from '@almanac/ui/search-box'
import { Skeleton } from '@almanac/ui/skeleton'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { FirstRecords } from '@/client/first-records'
import { usePermission, useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { siteColumns } from './site-columns.tsx'
import { useSearch } from './use-search.ts'
import { useSiteSpeaking } from './use-site-speaking.ts'

/** Every site of the firm, found by any part of a name, street, phone or tank. */
export function Sites() {
  const firm = useRebedFirm()
  const speaking = useSiteSpeaking()
  const { words } = speaking
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
        title={words('title')}
        lead={words('lead')}
        actions={
          mayChange ? (
            <>
              <LinkButton href="/ask-next" link={Link}>
                {words('askNext')}
              </LinkButton>
              <LinkButton href="/sites/new" kind="ink" link={Link}>
                {words('add')}
              </LinkButton>
            </>
          ) : null
        }
      />
      <SearchBox
        label={words('search')}
        placeholder={words('example')}
        value={text}
        onChange={(event) => type(event.target.value)}
        onSubmit={(event) => event.preventDefault()}
      />
      <output aria-live="polite" className="mt-2 block min-h-6 text-small text-soft">
        {sites.isSuccess && searched && !sites.isPlaceholderData ? foundWords(rows.length, sites.hasNextPage, searched, words) : ''}
      </output>
      {failure ? <Problem happened={failure.message} onRetry={() => void sites.refetch()} retrying={sites.isFetching} /> : null}
      {sites.isPending ? <Skeleton lines={12} label={words('loading')} /> : null}
      {sites.isSuccess ? (
        <DataTable
          caption={words('title')}
          columns={siteColumns(today, firm, speaking)}
          rows={rows}
          rowKey={(row) => row.id}
          rowHref={(row) => `/sites/${row.id}`}
          link={Link}
          busy={sites.isPlaceholderData}
          empty={searched ? <NothingFound searched={searched} onClear={() => type('')} /> : <FirstRecords title={words('none')} />}
        />
      ) : null}
      {sites.hasNextPage ? (
        <p className="py-4">
          <Button onClick={() => void sites.fetchNextPage()} busy={sites.isFetchingNextPage} busyLabel={words('loadingMore')}>
            {words('more')}
          </Button>
        </p>
      ) : null}
    </>
  )
}

function foundWords(count: number, more: boolean, text: string, words: Words<'sites'>): string {
  return more ? words('moreMatch', { count: String(count - 1), text }) : words('match', { count, text })
}

function NothingFound({ searched, onClear }: { searched: string; onClear: () => void }) {
  const words = useWords('sites')
  return (
    <Empty title={words('noMatch', { text: searched })} action={<Button onClick={onClear}>{words('showAll')}</Button>}>
      {words('howToSearch')}
    </Empty>
  )
}
