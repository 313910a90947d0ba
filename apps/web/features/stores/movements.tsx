'use client'
import type { MovementRow } from '@almanac/contract/stores'
import { Pager } from '@almanac/ui/pager'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatInstant } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useSession } from '@/client/providers'
import { useStockAmount } from '@/client/use-stock-amount'

/** Each change of quantity, the newest first. */
export function Movements() {
  const { api, me } = useSession()
  const words = useWords('stores')
  const amountText = useStockAmount()
  const movements = useInfiniteQuery(
    api.stores.movements.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 25, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = movements.data?.pages.flatMap((one) => one.rows) ?? []
  if (movements.isPending) return <Skeleton lines={4} label={words('loadingChanges')} />
  if (rows.length === 0) return <p className="text-soft">{words('noChanges')}</p>
  return (
    <>
      <ul className="border-t border-line">
        {rows.map((row) => (
          <li key={row.id} className="flex flex-wrap gap-x-5 border-b border-line py-2">
            <span className="w-44 text-soft">{formatInstant(row.at, me.company)}</span>
            <span className="w-24 text-right">
              {row.quantity > 0 ? '+' : ''}
              {amountText(row.quantity, row.unit)}
            </span>
            <span className="grow">
              <MovementText row={row} />
            </span>
          </li>
        ))}
      </ul>
      {movements.hasNextPage ? <Pager onNext={() => void movements.fetchNextPage()} busy={movements.isFetchingNextPage} /> : null}
    </>
  )
}

/** "10% resin bag, used at Copper Street 12". */
function MovementText({ row }: { row: MovementRow }) {
  const words = useWords('stores')
  const what = `${row.itemName}, ${words(`reason/${row.reason}`)}`
  const { visitId } = row
  if (!visitId) return what
  const label = row.siteLabel ?? words('aSite')
  return words.rich('atSite', {
    what,
    site: () => (
      <TextLink href={`/visits/${visitId}`} link={Link}>
        {label}
      </TextLink>
    ),
  })
}
