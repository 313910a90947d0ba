'use client'
import type { AnswerRow } from '@almanac/contract/reminders'
import { doneByWords, reminderAnswerWords } from '@almanac/records/reminder-answer'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatInstant } from '@almanac/units/format-clock'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'

/** What an answer says beyond its kind; empty where that is all. */
function more({ days, askAfter, doneDay, doneBy }: AnswerRow, display: DayDisplay): string {
  if (days) return days
  if (askAfter) return `ask again from ${formatDay(askAfter, display)}`
  return doneDay ? `${formatDay(doneDay, display)}${doneBy ? `, ${doneByWords[doneBy]}` : ''}` : ''
}

/** What customers answered by the link, the newest first. What follows from one is on the list of whom to call, or among the jobs. */
export function Answers() {
  const { api, me } = useSession()
  const display = useDisplay()
  const answers = useInfiniteQuery(
    api.reminders.answers.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = answers.data?.pages.flatMap((one) => one.rows) ?? []
  if (answers.error) return <Problem happened={readFailure(answers.error).message} onRetry={() => void answers.refetch()} />
  if (answers.isPending) return <Skeleton lines={6} label="Loading the answers" />
  if (rows.length === 0)
    return (
      <Empty
        title="Nobody has answered yet"
        action={
          <LinkButton href="/reminders" link={Link}>
            See what is waiting
          </LinkButton>
        }
      >
        Each mail and text has a link. What a customer answers there appears here.
      </Empty>
    )
  return (
    <>
      <ul className="border-t border-line">
        {rows.map((row) => (
          <li key={row.id} className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 border-b border-line py-3">
            <span className="wrap-anywhere">
              <Link href={`/sites/${row.siteId}`} className="font-semibold underline underline-offset-4">
                {row.siteLabel}
              </Link>{' '}
              <span className="text-soft">{row.contactName}</span>
              <span className="block">
                {reminderAnswerWords[row.kind]}
                {more(row, display) ? `: ${more(row, display)}` : ''}
              </span>
            </span>
            <span className="text-small text-soft">{formatInstant(row.createdAt, me.company)}</span>
          </li>
        ))}
      </ul>
      {answers.hasNextPage ? <Pager onNext={() => void answers.fetchNextPage()} busy={answers.isFetchingNextPage} /> : null}
    </>
  )
}
