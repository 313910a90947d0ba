'use client'
import type { MessageRow } from '@almanac/contract/reminders'
import { type DeskEvent, type MessageList, messageStateWords } from '@almanac/records/message-state'
import { Button } from '@almanac/ui/button'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { formatInstant } from '@almanac/units/format-clock'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** What is offered at a message in each state, the likeliest first. */
const OFFERED: Partial<Record<MessageRow['state'], readonly (readonly [DeskEvent, string])[]>> = {
  approved: [
    ['mark-sent', 'Mark as sent'],
    ['hold', 'Hold'],
    ['withdraw', 'Withdraw'],
  ],
  held: [
    ['free', 'Take off hold'],
    ['withdraw', 'Withdraw'],
  ],
  uncertain: [
    ['mark-sent', 'Mark as sent'],
    ['send-again', 'Send again'],
  ],
  refused: [['send-again', 'Send again']],
  sent: [['bounce', 'It came back']],
}

const EMPTY: Record<MessageList, [title: string, words: string]> = {
  outbox: ['The outbox is empty', 'Approve a waiting reminder and its message appears here.'],
  check: ['Nothing to check', 'A message appears here when it was refused, came back, or may not have arrived.'],
  sent: ['Nothing was sent yet', 'What you approve goes out from the outbox and is kept here.'],
}

/** Messages of one list, the newest first; each opens to what it says and what can be done. */
export function Outbox({ list }: { list: MessageList }) {
  const { api } = useSession()
  const messages = useInfiniteQuery(
    api.reminders.messages.infiniteOptions({
      input: (cursor: string | undefined) => ({ list, limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const step = useCommand(api.reminders.step.mutationOptions())
  const endLink = useCommand(api.reminders.endLink.mutationOptions())
  const rows = messages.data?.pages.flatMap((one) => one.rows) ?? []
  const refused = step.data?.results.flatMap((one) => (one.reason ? [one.reason] : [])) ?? []
  const failure = messages.error ?? step.error ?? endLink.error
  if (messages.isPending) return <Skeleton lines={6} label="Loading the messages" />
  const [title, words] = EMPTY[list]
  return (
    <>
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void messages.refetch()} /> : null}
      {refused.length > 0 ? <Notice kind="mind">{refused.join(' ')}</Notice> : null}
      {messages.isSuccess && rows.length === 0 ? (
        <Empty
          title={title}
          action={
            <LinkButton href="/reminders" link={Link}>
              See what is waiting
            </LinkButton>
          }
        >
          {words}
        </Empty>
      ) : (
        <ul className="border-t border-line">
          {rows.map((row) => (
            <Message
              key={row.id}
              row={row}
              busy={step.isPending || endLink.isPending}
              onEndLink={() => row.reminderId && endLink.send({ reminderId: row.reminderId })}
              onStep={(event) => step.send({ event, messages: [{ id: row.id, version: row.version }] })}
            />
          ))}
        </ul>
      )}
      {messages.hasNextPage ? <Pager onNext={() => void messages.fetchNextPage()} busy={messages.isFetchingNextPage} /> : null}
    </>
  )
}

type MessageProps = { row: MessageRow; busy: boolean; onStep: (event: DeskEvent) => void; onEndLink: () => void }

function Message({ row, busy, onStep, onEndLink }: MessageProps) {
  const { me } = useSession()
  const maySend = usePermission('send:message')
  const offered = maySend ? (OFFERED[row.state] ?? []) : []
  return (
    <li className="border-b border-line py-3">
      <details>
        <summary className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1">
          <span className="wrap-anywhere">
            <span className="font-semibold">{row.siteLabel ?? row.subject}</span> <span className="text-soft">to {row.address}</span>
          </span>
          <span className="flex gap-4 text-small text-soft">
            <StatusWord shape="hollow">{messageStateWords[row.state]}</StatusWord>
            {formatInstant(row.settledAt ?? row.createdAt, me.company)}
          </span>
        </summary>
        {row.stateReason ? (
          <p className="mt-3">
            {row.stateReason}
            {row.tryAfter ? ` We try again ${formatInstant(row.tryAfter, me.company)}.` : ''}
          </p>
        ) : null}
        <p className="mt-3 font-medium wrap-anywhere">{row.subject}</p>
        <p className="mt-2 max-w-[70ch] whitespace-pre-line wrap-anywhere">{row.body}</p>
        {row.hasFile ? (
          <p className="mt-3">
            <LinkButton href={`/api/messages/${row.id}/report`} file>
              Report as sent (PDF)
            </LinkButton>
          </p>
        ) : null}
        {maySend && (offered.length > 0 || row.linkUntil) ? (
          <p className="mt-3 flex flex-wrap gap-3">
            {offered.map(([event, label]) => (
              <Button key={event} busy={busy} onClick={() => onStep(event)}>
                {label}
              </Button>
            ))}
            {row.linkUntil ? (
              <Button busy={busy} onClick={onEndLink}>
                End answer link
              </Button>
            ) : null}
          </p>
        ) : null}
      </details>
    </li>
  )
}
