'use client'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { formatInstant } from '@almanac/units/format-clock'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'

/** Messages that were released, the newest first; each opens to its text. */
export function Outbox() {
  const { api, me } = useSession()
  const messages = useInfiniteQuery(
    api.reminders.messages.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = messages.data?.pages.flatMap((one) => one.rows) ?? []
  if (messages.error) return <Problem happened={readFailure(messages.error).message} onRetry={() => void messages.refetch()} />
  if (messages.isPending) return <Skeleton lines={6} label="Loading the outbox" />
  if (rows.length === 0)
    return (
      <Empty
        title="The outbox is empty"
        action={
          <LinkButton href="/reminders" link={Link}>
            See what is waiting
          </LinkButton>
        }
      >
        Approve a waiting reminder and its message appears here.
      </Empty>
    )
  return (
    <>
      <ul className="border-t border-line">
        {rows.map((row) => (
          <li key={row.id} className="border-b border-line py-3">
            <details>
              <summary className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1">
                <span>
                  <span className="font-semibold">{row.siteLabel ?? row.subject}</span> <span className="text-soft">to {row.address}</span>
                </span>
                <span className="flex gap-4 text-small text-soft">
                  <StatusWord shape="hollow">{row.state === 'outbox' ? 'in the outbox' : row.state}</StatusWord>
                  {formatInstant(row.createdAt, me.company)}
                </span>
              </summary>
              <p className="mt-3 font-medium">{row.subject}</p>
              <p className="mt-2 max-w-[70ch] whitespace-pre-line">{row.body}</p>
            </details>
          </li>
        ))}
      </ul>
      {messages.hasNextPage ? <Pager onNext={() => void messages.fetchNextPage()} busy={messages.isFetchingNextPage} /> : null}
    </>
  )
}
