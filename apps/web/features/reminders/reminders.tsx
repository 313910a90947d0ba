'use client'
import { useDisplay } from '@almanac/ui/display'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useSearchParams } from 'next/navigation'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { Outbox } from './outbox.tsx'
import { ReminderList } from './reminder-list.tsx'

const VIEWS = ['waiting', 'held', 'outbox', 'dropped'] as const
type View = (typeof VIEWS)[number]

const LEADS: Record<View, string> = {
  waiting: 'Customers whose bed comes due. Nothing is sent until you approve it.',
  held: 'On hold until you take them off hold or approve them.',
  outbox: 'Approved and ready to send. Delivery by mail is set up separately; until then, copy or print from here.',
  dropped: 'No longer needed: a job is open, or the bed has ended.',
}

/** What is due to be said, and what was said. */
export function Reminders() {
  const display = useDisplay()
  const { api } = useSession()
  const asked = useSearchParams().get('view')
  const view = VIEWS.find((one) => one === asked) ?? 'waiting'
  const counts = useQuery(api.reminders.counts.queryOptions())
  const count = (one: View) => (one === 'outbox' ? counts.data?.released : counts.data?.[one])
  return (
    <>
      <PageHead
        title="Reminders"
        lead={`${LEADS[view]}${view === 'waiting' && counts.data ? ` A reminder is created ${counts.data.leadDays} days before the due window starts, if a contact consents.` : ''}`}
      />
      <nav aria-label="Reminders by state" className="mb-4 flex flex-wrap gap-x-6 gap-y-2 border-b border-line">
        {VIEWS.map((one) => (
          <Link
            key={one}
            href={`/reminders?view=${one}`}
            aria-current={one === view ? 'page' : undefined}
            className={`-mb-px border-b-2 py-2 ${one === view ? 'border-ink' : 'border-transparent text-soft hover:text-ink'}`}
          >
            {one} {count(one) === undefined ? '' : `(${showWhole(count(one), display)})`}
          </Link>
        ))}
      </nav>
      {counts.error ? <Problem happened={readFailure(counts.error).message} onRetry={() => void counts.refetch()} /> : null}
      {view === 'outbox' ? <Outbox /> : <ReminderList key={view} state={view} />}
    </>
  )
}
