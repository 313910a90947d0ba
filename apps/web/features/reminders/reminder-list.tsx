'use client'
import type { ReminderRow } from '@almanac/contract/reminders'
import { Button } from '@almanac/ui/button'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { FilterBar } from '@almanac/ui/filter-bar'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { type DayDisplay, formatDay, formatDays } from '@almanac/units/format-day'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { EmptyOrFirst } from '@/client/empty-or-first'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { ReminderPreview } from './reminder-preview.tsx'

const CHANNELS = { email: 'email', phone: 'phone', text: 'text message', letter: 'letter' }

const windowWords = (row: ReminderRow, display: DayDisplay) =>
  row.dueEarliest && row.dueLatest
    ? formatDays(row.dueEarliest, row.dueLatest, display)
    : [row.dueEarliest, row.dueLatest].map((day) => (day ? formatDay(day, display) : '?')).join(' – ')

/** Reminders of one state; the owner ticks some and decides. */
export function ReminderList({ state }: { state: 'waiting' | 'held' | 'dropped' }) {
  const display = useDisplay()
  const { api } = useSession()
  const mayDecide = usePermission('decide:reminder') && state !== 'dropped'
  const [selected, setSelected] = useState<ReadonlySet<string>>(new Set())
  const [previewed, setPreviewed] = useState<ReminderRow | null>(null)
  const list = useInfiniteQuery(
    api.reminders.list.infiniteOptions({
      input: (cursor: string | undefined) => ({ state, limit: 200, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const decide = useCommand(api.reminders.decide.mutationOptions(), { onDone: () => setSelected(new Set()) })
  const rows = list.data?.pages.flatMap((one) => one.rows) ?? []
  const send = (decision: 'release' | 'hold' | 'unhold') =>
    decide.send({ decision, reminders: rows.filter((row) => selected.has(row.id)).map(({ id, version }) => ({ id, version })) })
  const failure = list.error ?? decide.error
  const results = decide.data?.results ?? []
  const reasons = [...new Set(results.flatMap((one) => (one.reason ? [one.reason] : [])))]
  const done = results.filter((one) => one.done).length
  return (
    <>
      {mayDecide ? (
        <FilterBar
          label="Decide"
          selectedCount={selected.size}
          actions={
            <>
              <Button disabled={selected.size === 0} busy={decide.isPending} onClick={() => send(state === 'held' ? 'unhold' : 'hold')}>
                {state === 'held' ? 'Take off hold' : 'Hold'}
              </Button>
              <Button
                kind="ink"
                disabled={selected.size === 0}
                busy={decide.isPending}
                busyLabel="Approving"
                onClick={() => send('release')}
              >
                Approve
              </Button>
            </>
          }
        >
          <span className="text-soft">Check the ones to decide on.</span>
        </FilterBar>
      ) : null}
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void list.refetch()} /> : null}
      {results.length > 0 ? (
        <Notice kind={reasons.length > 0 ? 'mind' : 'done'}>
          {done} done{reasons.length > 0 ? `; ${results.length - done} not: ${reasons.join(' ')}` : '.'}
        </Notice>
      ) : null}
      {list.isPending ? <Skeleton lines={8} label="Loading the reminders" /> : null}
      {list.isSuccess ? (
        <DataTable
          caption={`Reminders, ${state}`}
          rows={rows}
          rowKey={(row) => row.id}
          rowName={(row) => row.siteLabel}
          rowHref={(row) => `/beds/${row.bedId}`}
          link={Link}
          selected={mayDecide ? selected : undefined}
          onSelect={mayDecide ? setSelected : undefined}
          columns={[
            {
              key: 'site',
              head: 'Site',
              phone: 'title',
              cell: (row) => (
                <>
                  <span className="font-semibold">{row.siteLabel}</span>
                  <span className="block text-small text-soft">{row.town}</span>
                </>
              ),
            },
            { key: 'who', head: 'To', cell: (row) => row.contactName ?? 'name not known' },
            {
              key: 'channel',
              head: 'By',
              cell: (row) => (
                <span className="wrap-anywhere">
                  {CHANNELS[row.channel]}
                  {row.address ? `: ${row.address}` : ''}
                </span>
              ),
            },
            { key: 'window', head: 'Due window', cell: (row) => windowWords(row, display) },
            {
              key: 'says',
              head: 'Message',
              cell: (row) => (
                <Button kind="quiet" onClick={() => setPreviewed(row)}>
                  Preview
                </Button>
              ),
            },
            { key: 'reason', head: 'Reason', cell: (row) => row.stateReason && <span className="text-soft">{row.stateReason}</span> },
          ]}
          empty={
            state === 'waiting' ? (
              <EmptyOrFirst
                first="No reminders yet"
                title="No reminder is waiting"
                action={
                  <LinkButton href="/coming-due" link={Link}>
                    See what comes due
                  </LinkButton>
                }
              >
                When a bed’s due window comes near, a reminder for it appears here, if a contact agreed to hear from you.
              </EmptyOrFirst>
            ) : (
              <Empty
                title={state === 'held' ? 'No reminder is on hold' : 'No reminder was dropped'}
                action={
                  <LinkButton href="/reminders" link={Link}>
                    See what is waiting
                  </LinkButton>
                }
              />
            )
          }
        />
      ) : null}
      {previewed ? <ReminderPreview reminder={previewed} onClose={() => setPreviewed(null)} /> : null}
      {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
    </>
  )
}
