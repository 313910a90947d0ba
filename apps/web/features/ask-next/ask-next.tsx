'use client'
import type { AskRow } from '@almanac/contract/beds'
import { Button } from '@almanac/ui/button'
import { type Column, DataTable } from '@almanac/ui/data-table'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import type { AmountDisplay } from '@almanac/units/display'
import { formatMonth } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import { useInfiniteQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { answerLink } from '@/client/answer-place'
import type { BedTexts } from '@/client/bed-facts-words'
import { EmptyOrFirst } from '@/client/empty-or-first'
import { readFailure } from '@/client/failure'
import { PhoneLink } from '@/client/phone-link'
import { useSession } from '@/client/providers'
import { useBedTexts } from '@/client/use-bed-texts'

/** The records whose data is weakest: one question each, whom to ask, and the form for the answer. */
export function AskNext() {
  const texts = useBedTexts()
  const beds = useWords('bed')
  const { api, me } = useSession()
  const asks = useInfiniteQuery(
    api.beds.askNext.infiniteOptions({
      input: (cursor: string | undefined) => ({ limit: 50, cursor }),
      initialPageParam: undefined,
      getNextPageParam: (last) => last.nextCursor ?? undefined,
    }),
  )
  const rows = asks.data?.pages.flatMap((one) => one.rows) ?? []
  return (
    <>
      <PageHead
        title="Ask at the next call"
        above={
          <TextLink href="/sites" link={Link}>
            Sites
          </TextLink>
        }
        actions={<PrintButton>Print the call list</PrintButton>}
        lead="The records whose missing facts widen due windows most, weakest first. One answer on the phone narrows the forecast at once."
      />
      {asks.error ? (
        <Problem happened={readFailure(asks.error).message} onRetry={() => void asks.refetch()} retrying={asks.isFetching} />
      ) : null}
      {asks.isPending ? <Skeleton lines={12} label="Loading the records" /> : null}
      {asks.isSuccess ? (
        <DataTable
          caption="Records to ask about, weakest first"
          columns={columns(texts, me.company, beds)}
          rows={rows}
          rowKey={(row) => row.bedId}
          rowHref={(row) => `/beds/${row.bedId}`}
          link={Link}
          empty={
            <EmptyOrFirst
              first="Nobody to ask yet"
              title="Nothing to ask"
              action={
                <LinkButton href="/coming-due" link={Link}>
                  See what comes due
                </LinkButton>
              }
            >
              No answer would move a due date by more than a few months.
            </EmptyOrFirst>
          }
        />
      ) : null}
      {asks.hasNextPage ? (
        <p className="py-4">
          <Button onClick={() => void asks.fetchNextPage()} busy={asks.isFetchingNextPage} busyLabel="Loading more">
            Show 50 more
          </Button>
        </p>
      ) : null}
    </>
  )
}

/** A record that cannot be forecast contradicts itself: what is wrong is set right in its facts. */
const answerLinkOf = (row: AskRow) => answerLink(row.refusal ? 'beginning' : row.question, row)

function columns(texts: BedTexts, display: AmountDisplay, beds: Words<'bed'>): Column<AskRow>[] {
  return [
    {
      key: 'site',
      head: 'Site',
      phone: 'title',
      width: '21%',
      cell: (row) => (
        <>
          {row.siteLabel}
          <span className="block text-small font-normal text-soft">{[row.town, texts.tank(row.tank)].filter(Boolean).join(', ')}</span>
        </>
      ),
    },
    { key: 'question', head: 'Ask', width: '29%', cell: (row) => row.refusal ?? beds(`question/${row.question}`) },
    {
      key: 'who',
      head: 'Contact',
      width: '20%',
      cell: (row) => <Whom row={row} />,
    },
    {
      key: 'doubt',
      head: 'Now due',
      width: '16%',
      cell: (row) =>
        row.due10Day && row.due90Day ? (
          <span className="text-small">
            between {formatMonth(row.due10Day, display)} and {formatMonth(row.due90Day, display)}
          </span>
        ) : (
          <span className="text-small text-soft">no forecast without it</span>
        ),
    },
    {
      key: 'answer',
      head: <span className="sr-only">Answer</span>,
      phoneHead: '',
      align: 'right',
      cell: (row) => {
        const { href, act } = answerLinkOf(row)
        return (
          <LinkButton href={href} link={Link}>
            {beds(act)}
          </LinkButton>
        )
      },
    },
  ]
}

function Whom({ row }: { row: AskRow }) {
  const [contact] = row.contacts
  if (!contact)
    return (
      <span>
        {row.customerName ?? 'no customer'}
        <span className="block text-small text-soft">no phone number</span>
      </span>
    )
  return (
    <span>
      {contact.name ?? row.customerName}
      <span className="block">
        <PhoneLink phone={contact.phone} />
        {contact.mayCall === false ? <span className="text-small text-soft"> asked not to be called</span> : null}
      </span>
    </span>
  )
}
