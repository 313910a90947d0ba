'use client'
import type { ArchivedRow } from '@almanac/contract/archive'
import { archivableWords, archiveReasonWords } from '@almanac/records/archive-reason'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatInstant } from '@almanac/units/format-clock'
import { useInfiniteQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { MergeForm } from './merge-form.tsx'
import { MergedList } from './merged-list.tsx'

function BringBack({ row }: { row: ArchivedRow }) {
  const { api } = useSession()
  const softener = useCommand(api.archive.restoreSoftener.mutationOptions())
  const site = useCommand(api.archive.restoreSite.mutationOptions())
  const customer = useCommand(api.archive.restoreCustomer.mutationOptions())
  const { id, version } = row
  const back = {
    softener: () => softener.send({ softenerId: id, version }),
    site: () => site.send({ siteId: id, version }),
    customer: () => customer.send({ customerId: id, version }),
  }
  const error = softener.error ?? site.error ?? customer.error
  return (
    <>
      <Button busy={softener.isPending || site.isPending || customer.isPending} onClick={back[row.kind]}>
        Bring back<span className="sr-only"> {row.label}</span>
      </Button>
      {error ? <Problem happened={readFailure(error).message} /> : null}
    </>
  )
}

/** What was archived, why, and the way back. */
export function Archive() {
  const display = useDisplay()
  const { api } = useSession()
  const list = useInfiniteQuery(
    api.archive.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = list.data?.pages.flatMap((one) => one.rows) ?? []
  return (
    <>
      <PageHead
        title="Archive"
        lead="Customers, sites and softeners you no longer look after. They’re in no list and no forecast; their history is kept."
      />
      {list.error ? <Problem happened={readFailure(list.error).message} onRetry={() => void list.refetch()} /> : null}
      {list.isPending ? <Skeleton lines={6} label="Loading the archive" /> : null}
      {list.isSuccess ? (
        <DataTable
          caption="Archived"
          rows={rows}
          rowKey={(row) => row.id}
          columns={[
            { key: 'label', head: 'Name', phone: 'title', cell: (row) => row.label },
            { key: 'kind', head: 'Kind', cell: (row) => archivableWords[row.kind] },
            { key: 'reason', head: 'Reason', cell: (row) => archiveReasonWords[row.reason] },
            { key: 'when', head: 'Archived', cell: (row) => formatInstant(row.archivedAt, display) },
            { key: 'back', head: <span className="sr-only">Bring back</span>, cell: (row) => <BringBack row={row} /> },
          ]}
          empty={<Empty title="Nothing is archived">Archive a softener, a site or a customer from the site’s page, under Edit.</Empty>}
        />
      ) : null}
      {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
      <Section title="On record twice">
        <MergeForm />
        <MergedList />
      </Section>
    </>
  )
}
