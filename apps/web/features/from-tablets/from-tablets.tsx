'use client'
import type { SetAsideRow } from '@almanac/contract/field'
import { type SetAsideKind, setAsideKindWords } from '@almanac/records/set-aside-kind'
import { Button } from '@almanac/ui/button'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Pager } from '@almanac/ui/pager'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatInstant } from '@almanac/units/format-clock'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const COMMANDS: Readonly<Record<string, string>> = {
  start: 'Start of a visit',
  'undo-start': 'Start taken back',
  'close-out': 'Close-out',
  entries: 'Entries',
}

const WHAT_TO_DO: Record<SetAsideKind, string> = {
  refused: 'Nothing was changed. Call the technician, enter on the job what counts, then press Settled.',
  unreadable: 'Nothing was changed. Enter by hand what stands below, then press Settled.',
  landed: 'It’s on record. Check the job and tell the customer if their visit changed.',
  lost: 'Ask the technician what’s missing. It isn’t on the tablet any more.',
}

/** A tablet's clock this far from the server's is worth a word. */
const FAR_MINUTES = 10

/** What a tablet sent that the office has to look at: who, what, why, and all that it holds. */
function TabletEntry({ row }: { row: SetAsideRow }) {
  const display = useDisplay()
  const { api } = useSession()
  const settle = useCommand(api.field.settle.mutationOptions())
  const { clockAheadMinutes: ahead } = row
  const place = row.siteLabel ?? 'A visit we don’t have'
  return (
    <li className="border-b border-line py-5">
      <h2 className="text-h2 font-semibold">
        {setAsideKindWords[row.kind]}: {place}
      </h2>
      <p>
        {COMMANDS[row.command] ?? row.command} by {row.personName ?? 'someone no longer on the day sheets'},{' '}
        {formatInstant(row.madeAt, display)}; received {formatInstant(row.receivedAt, display)}.
      </p>
      <p className="mt-1 font-medium">{row.reason}</p>
      {Math.abs(ahead) >= FAR_MINUTES ? (
        <p className="mt-1">
          The tablet’s clock is {Math.abs(ahead)} min {ahead > 0 ? 'ahead' : 'behind'}.
        </p>
      ) : null}
      <p className="mt-1">{WHAT_TO_DO[row.kind]}</p>
      <details className="my-3">
        <summary className="min-h-control cursor-pointer py-2">Everything it holds</summary>
        <DefinitionList facts={row.lines.map(({ name, text }, at) => ({ key: `${at}`, name, value: text }))} />
      </details>
      {settle.error ? <Problem happened={readFailure(settle.error).message} /> : null}
      <div className="flex flex-wrap gap-3">
        {row.jobId ? (
          <LinkButton href={`/jobs/${row.jobId}`} link={Link}>
            Open the job
          </LinkButton>
        ) : null}
        <Button busy={settle.isPending} onClick={() => settle.send({ asideId: row.id, version: row.version })}>
          Settled<span className="sr-only"> {place}</span>
        </Button>
      </div>
    </li>
  )
}

/** What tablets sent and could not be taken in, or was taken in against the plan, until somebody has dealt with it. */
export function FromTablets() {
  const { api } = useSession()
  const list = useInfiniteQuery(
    api.field.setAside.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 20, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = list.data?.pages.flatMap((one) => one.rows) ?? []
  return (
    <>
      <PageHead title="From the tablets" lead="What technicians sent that needs someone’s eye. All else was taken in." />
      {list.error ? <Problem happened={readFailure(list.error).message} onRetry={() => void list.refetch()} /> : null}
      {list.isPending ? <Skeleton lines={6} label="Loading what tablets sent" /> : null}
      {list.isSuccess && rows.length === 0 ? <Empty title="Nothing waits">Every entry from the tablets was taken in.</Empty> : null}
      <ul className={rows.length > 0 ? 'border-t border-line' : ''}>
        {rows.map((row) => (
          <TabletEntry key={row.id} row={row} />
        ))}
      </ul>
      {list.hasNextPage ? <Pager onNext={() => void list.fetchNextPage()} busy={list.isFetchingNextPage} /> : null}
    </>
  )
}
