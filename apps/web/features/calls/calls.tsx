'use client'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { CallBackList } from '@/client/call/call-back-list'
import { CallList } from '@/client/call/call-list'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'

/** Whom to call, due first, and the calls that came in. */
export function Calls() {
  const { api } = useSession()
  const owed = useQuery(api.calls.callBacks.queryOptions())
  const list = useInfiniteQuery(
    api.calls.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const calls = list.data?.pages.flatMap((one) => one.rows) ?? []
  const failure = owed.error ?? list.error
  return (
    <>
      <PageHead
        title="Calls"
        lead="Whom to call, due first, and every call that came in."
        actions={<PrintButton>Print the list</PrintButton>}
      />
      {failure ? (
        <Problem happened={readFailure(failure).message} onRetry={() => void Promise.all([owed.refetch(), list.refetch()])} />
      ) : null}
      <Section title="To call">
        {owed.isPending ? <Skeleton lines={5} label="Loading the list" /> : null}
        {owed.data?.length === 0 ? <p className="text-soft">Nobody to call. Promised call-backs and broken promises appear here.</p> : null}
        {owed.data && owed.data.length > 0 ? <CallBackList rows={owed.data} /> : null}
      </Section>
      <Section title="Calls taken">
        {list.isPending ? <Skeleton lines={6} label="Loading the calls" /> : null}
        {list.isSuccess && calls.length === 0 ? (
          <p className="text-soft">No calls yet. Press “Record a call” when the phone rings.</p>
        ) : null}
        {calls.length > 0 ? <CallList calls={calls} /> : null}
        {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
      </Section>
    </>
  )
}
