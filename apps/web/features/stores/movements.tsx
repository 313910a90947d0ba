'use client'
import { movementReasonWords } from '@almanac/records/stock'
import { Pager } from '@almanac/ui/pager'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatAmount } from '@almanac/units/amount-words'
import { formatInstant } from '@almanac/units/format-clock'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useSession } from '@/client/providers'

/** Each change of quantity, the newest first. */
export function Movements() {
  const { api, me } = useSession()
  const movements = useInfiniteQuery(
    api.stores.movements.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 25, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = movements.data?.pages.flatMap((one) => one.rows) ?? []
  if (movements.isPending) return <Skeleton lines={4} label="Loading the movements" />
  if (rows.length === 0) return <p className="text-soft">No stock changes yet.</p>
  return (
    <>
      <ul className="border-t border-line">
        {rows.map((row) => (
          <li key={row.id} className="flex flex-wrap gap-x-5 border-b border-line py-2">
            <span className="w-44 text-soft">{formatInstant(row.at, me.company)}</span>
            <span className="w-24 text-right">
              {row.quantity > 0 ? '+' : ''}
              {formatAmount(row.quantity, row.unit, me.company)}
            </span>
            <span className="grow">
              {row.itemName}, {movementReasonWords[row.reason]}
              {row.visitId ? (
                <>
                  {' '}
                  at{' '}
                  <TextLink href={`/visits/${row.visitId}`} link={Link}>
                    {row.siteLabel ?? 'a site'}
                  </TextLink>
                </>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      {movements.hasNextPage ? <Pager onNext={() => void movements.fetchNextPage()} busy={movements.isFetchingNextPage} /> : null}
    </>
  )
}
