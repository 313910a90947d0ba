'use client'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay, formatSource } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { AddPeriod } from './add-period.tsx'
import { SupplyMoves } from './supply-moves.tsx'
import { hardnessWords, mgL, periodWords } from './water-words.ts'

/** One supply: its dated history, and what each change did to the forecasts of its beds. */
export function Supply({ waterSupplyId }: { waterSupplyId: string }) {
  const { api, me } = useSession()
  const mayChange = usePermission('change:water')
  const [adding, setAdding] = useState(false)
  const [waiting, setWaiting] = useState<number | null>(null)
  const supply = useQuery(api.water.supply.queryOptions({ input: { waterSupplyId } }))
  const withdraw = useCommand(api.water.withdrawPeriod.mutationOptions())
  const failure = supply.error ?? withdraw.error
  const page = supply.data
  const display = me.company
  return (
    <>
      <PageHead
        title={page?.name ?? 'Water supply'}
        above={
          <TextLink href="/water" link={Link}>
            Water
          </TextLink>
        }
        lead={
          page
            ? `${page.kind === 'town' ? 'Town supply' : 'Private well'}, ${showWhole(page.sites, display)} sites, ${showWhole(page.bedsWatched, display)} beds watched.`
            : undefined
        }
        actions={
          mayChange ? (
            <Button kind="ink" onClick={() => setAdding(true)}>
              Record a change
            </Button>
          ) : undefined
        }
      />
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void supply.refetch()} /> : null}
      {waiting !== null ? (
        <Notice kind="said">
          Saved. {showWhole(waiting, display)} beds are being forecast again; what moved appears below within seconds.
        </Notice>
      ) : null}
      {supply.isPending ? <Skeleton lines={8} label="Loading the supply" /> : null}
      {page ? (
        <>
          <Section title="Water quality, newest first">
            <DataTable
              caption="Dated history of the supply"
              rows={page.periods}
              rowKey={(row) => row.id}
              columns={[
                {
                  key: 'from',
                  head: 'From',
                  phone: 'title',
                  cell: (row) => (row.fromDay ? formatDay(row.fromDay, display) : 'as far back as known'),
                },
                { key: 'disinfectant', head: 'Disinfectant', cell: (row) => periodWords(row) },
                { key: 'hardness', head: 'Hardness', cell: (row) => hardnessWords(row, display) ?? 'not known' },
                { key: 'iron', head: 'Iron', cell: (row) => mgL(row.ironMgL) ?? 'not known' },
                { key: 'source', head: 'Source', cell: (row) => <span className="text-soft">{formatSource(row.source, display)}</span> },
                {
                  key: 'withdraw',
                  head: <span className="sr-only">Action</span>,
                  align: 'right',
                  cell: (row) =>
                    mayChange ? (
                      <Button kind="quiet" busy={withdraw.isPending} onClick={() => withdraw.send({ id: row.id, version: row.version })}>
                        Withdraw
                      </Button>
                    ) : null,
                },
              ]}
              empty={
                <p className="text-soft">
                  No data yet; typical water is assumed, and the beds say so. Enter what the supplier’s yearly report states.
                </p>
              }
            />
          </Section>
          <SupplyMoves moves={page.moves} />
          {adding ? (
            <AddPeriod waterSupplyId={waterSupplyId} periods={page.periods} onClose={() => setAdding(false)} onDone={setWaiting} />
          ) : null}
        </>
      ) : null}
    </>
  )
}
