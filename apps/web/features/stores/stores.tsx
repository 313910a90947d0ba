'use client'
import type { StockRow } from '@almanac/contract/stores'
import { oneOf } from '@almanac/records/choices'
import { stockKinds } from '@almanac/records/stock'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Empty } from '@almanac/ui/empty'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { useWords } from '@almanac/words/use-words'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useStockAmount } from '@/client/use-stock-amount'
import { AddItems } from './add-items.tsx'
import { ChangeStock, type StockChange } from './change-stock.tsx'
import { ItemForm } from './item-form.tsx'
import { Movements } from './movements.tsx'
import { Orders } from './orders.tsx'

/** What is kept in the stores, and each change of it. */
export function Stores() {
  const { api } = useSession()
  const [words, pages] = [useWords('stores'), useWords('page')]
  const amountText = useStockAmount()
  const mayChange = usePermission('change:stores')
  const [change, setChange] = useState<StockChange | null>(null)
  const [item, setItem] = useState<StockRow | null>(null)
  const items = useInfiniteQuery(
    api.stores.items.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 100, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = items.data?.pages.flatMap((one) => one.rows) ?? []
  return (
    <>
      <PageHead title={pages('/stores')} lead={words('lead')} />
      <Section title={words('toOrder')} actions={<PrintButton>{words('printOrder')}</PrintButton>}>
        <Orders />
      </Section>
      {/* On paper the order goes to the supplier by itself; what is on hand follows on a page of its own, to count by. */}
      <h2 className="mt-8 mb-2 break-before-page text-h2 font-semibold">{words('stock')}</h2>
      {mayChange && items.isSuccess ? <AddItems none={rows.length === 0} /> : null}
      {items.error ? <Problem happened={readFailure(items.error).message} onRetry={() => void items.refetch()} /> : null}
      {items.isPending ? <Skeleton lines={8} label={words('loading')} /> : null}
      {items.isSuccess ? (
        <DataTable<StockRow>
          caption={words('items')}
          rows={rows}
          rowKey={(row) => row.id}
          columns={[
            { key: 'name', head: words('item'), phone: 'title', cell: (row) => <span className="font-semibold">{row.name}</span> },
            { key: 'kind', head: words('kind'), cell: (row) => words(`kind/${oneOf(stockKinds, row.kind) ?? 'other'}`) },
            { key: 'onHand', head: words('onHand'), align: 'right', cell: (row) => amountText(row.onHand, row.unit) },
            {
              key: 'state',
              head: words('state'),
              cell: (row) =>
                row.openDiscrepancies > 0 ? (
                  <StatusWord shape="triangle" tone="bead">
                    {words('usedMore')}
                  </StatusWord>
                ) : row.onHand === 0 ? (
                  <StatusWord shape="hollow" tone="danger">
                    {words('noneLeft')}
                  </StatusWord>
                ) : null,
            },
            {
              key: 'actions',
              head: <span className="sr-only">{words('actions')}</span>,
              align: 'right',
              cell: (row) =>
                mayChange ? (
                  <span className="inline-flex gap-2">
                    <Button onClick={() => setChange({ item: row, what: 'receive' })}>{words('receive')}</Button>
                    <Button onClick={() => setChange({ item: row, what: 'count' })}>{words('count')}</Button>
                    <Button onClick={() => setItem(row)}>
                      {words('change')}
                      <span className="sr-only"> {row.name}</span>
                    </Button>
                  </span>
                ) : null,
            },
          ]}
          empty={<Empty title={words('noItems')}>{words('noItemsLead')}</Empty>}
        />
      ) : null}
      {items.hasNextPage ? <Pager onNext={() => void items.fetchNextPage()} busy={items.isFetchingNextPage} /> : null}
      <div className="mt-8 print:hidden">
        <Section title={words('latest')}>
          <Movements />
        </Section>
      </div>
      {item ? <ItemForm key={item.id} item={item} onClose={() => setItem(null)} /> : null}
      {change ? <ChangeStock key={`${change.item.id} ${change.what}`} change={change} onClose={() => setChange(null)} /> : null}
    </>
  )
}
