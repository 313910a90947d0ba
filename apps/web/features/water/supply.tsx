'use client'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useSourceText } from '@/client/use-source-text'
import { AddPeriod } from './add-period.tsx'
import { SupplyMoves } from './supply-moves.tsx'
import { hardnessWords, mgL, periodWords } from './water-words.ts'

/** One supply: its dated history, and what each change did to the forecasts of its beds. */
export function Supply({ waterSupplyId }: { waterSupplyId: string }) {
  const { api, me } = useSession()
  const words = useWords('water')
  const sourceText = useSourceText()
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
        title={page?.name ?? words('aSupply')}
        above={
          <TextLink href="/water" link={Link}>
            {words('title')}
          </TextLink>
        }
        lead={
          page
            ? words(page.kind === 'town' ? 'of/town' : 'of/private-well', {
                sites: showWhole(page.sites, display),
                beds: showWhole(page.bedsWatched, display),
              })
            : undefined
        }
        actions={
          mayChange ? (
            <Button kind="ink" onClick={() => setAdding(true)}>
              {words('record')}
            </Button>
          ) : undefined
        }
      />
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void supply.refetch()} /> : null}
      {waiting !== null ? <Notice kind="said">{words('saved', { beds: showWhole(waiting, display) })}</Notice> : null}
      {supply.isPending ? <Skeleton lines={8} label={words('loadingOne')} /> : null}
      {page ? (
        <>
          <Section title={words('quality')}>
            <DataTable
              caption={words('history')}
              rows={page.periods}
              rowKey={(row) => row.id}
              columns={[
                {
                  key: 'from',
                  head: words('from'),
                  phone: 'title',
                  cell: (row) => (row.fromDay ? formatDay(row.fromDay, display) : words('farBack')),
                },
                { key: 'disinfectant', head: words('disinfectant'), cell: (row) => periodWords(row, display, words) },
                { key: 'hardness', head: words('hardness'), cell: (row) => hardnessWords(row, display, words) ?? words('notKnown') },
                { key: 'iron', head: words('iron'), cell: (row) => mgL(row.ironMgL, display) ?? words('notKnown') },
                { key: 'source', head: words('source'), cell: (row) => <span className="text-soft">{sourceText(row.source)}</span> },
                {
                  key: 'withdraw',
                  head: <span className="sr-only">{words('action')}</span>,
                  align: 'right',
                  cell: (row) =>
                    mayChange ? (
                      <Button kind="quiet" busy={withdraw.isPending} onClick={() => withdraw.send({ id: row.id, version: row.version })}>
                        {words('withdraw')}
                      </Button>
                    ) : null,
                },
              ]}
              empty={<p className="text-soft">{words('noData')}</p>}
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
