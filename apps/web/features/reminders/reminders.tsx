'use client'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { formatClockTimes } from '@almanac/units/format-clock'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useSearchParams } from 'next/navigation'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { Answers } from './answers.tsx'
import { Outbox } from './outbox.tsx'
import { ReminderList } from './reminder-list.tsx'

const VIEWS = ['waiting', 'held', 'outbox', 'check', 'sent', 'answers', 'dropped'] as const
type View = (typeof VIEWS)[number]

type Counts = { mails: boolean; texts: boolean; sendFrom: string; sendUntil: string }

/** What goes out from here by itself, and when; null where nothing does. */
function sendsWords({ mails, texts, sendFrom, sendUntil }: Counts, display: NumberDisplay): string | null {
  const what = mails && texts ? 'Emails and texts' : mails ? 'Emails' : texts ? 'Texts' : null
  return (
    what &&
    `Approved. ${what} go out automatically, ${formatClockTimes(sendFrom, sendUntil, display)} at the customer’s. Print or tell the others.`
  )
}

const LEADS: Record<View, string> = {
  waiting: 'Customers whose bed comes due. Nothing is sent until you approve it.',
  held: 'On hold until you take them off hold or approve them.',
  outbox: 'Approved. Print or tell these yourself, then mark each as sent.',
  check: 'These were refused, came back, or may not have arrived. Nothing is sent again until you say so.',
  answers: 'What customers answered by the link in their reminder.',
  sent: 'What was sent, and what was withdrawn before it went.',
  dropped: 'No longer needed: a job is open, or the bed has ended.',
}

/** What is due to be said, and what was said. */
export function Reminders() {
  const display = useDisplay()
  const { api } = useSession()
  const asked = useSearchParams().get('view')
  const view = VIEWS.find((one) => one === asked) ?? 'waiting'
  const counts = useQuery(api.reminders.counts.queryOptions())
  const count = (one: View) => counts.data?.[one]
  const lead = (view === 'outbox' && counts.data && sendsWords(counts.data, display)) || LEADS[view]
  return (
    <>
      <PageHead
        title="Reminders"
        actions={
          <LinkButton href="/reminders/texts" link={Link}>
            Reminder texts
          </LinkButton>
        }
        lead={`${lead}${view === 'waiting' && counts.data ? ` A reminder is created ${counts.data.leadDays} days before the due window starts, if a contact consents.` : ''}`}
      />
      <nav aria-label="Reminders by state" className="mb-4 flex flex-wrap gap-x-6 gap-y-2 border-b border-line">
        {VIEWS.map((one) => (
          <Link
            key={one}
            href={`/reminders?view=${one}`}
            aria-current={one === view ? 'page' : undefined}
            className={`-mb-px border-b-2 py-2 ${one === view ? 'border-ink' : 'border-transparent text-soft hover:text-ink'}`}
          >
            {one === 'check' ? 'to check' : one} {count(one) === undefined ? '' : `(${showWhole(count(one), display)})`}
          </Link>
        ))}
      </nav>
      {counts.error ? <Problem happened={readFailure(counts.error).message} onRetry={() => void counts.refetch()} /> : null}
      {view === 'outbox' && counts.data?.letters ? (
        <p className="mb-4">
          <LinkButton href="/api/letters">Print letters ({showWhole(counts.data.letters, display)})</LinkButton>
        </p>
      ) : null}
      {view === 'answers' ? (
        <Answers />
      ) : view === 'outbox' || view === 'check' || view === 'sent' ? (
        <Outbox key={view} list={view} />
      ) : (
        <ReminderList key={view} state={view} />
      )}
    </>
  )
}
