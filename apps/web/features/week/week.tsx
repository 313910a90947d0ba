'use client'
import { jobKinds } from '@almanac/records/job-kind'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { formatDays } from '@almanac/units/format-day'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useRouter, useSearchParams } from 'next/navigation'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useAskedDay } from '@/client/use-asked-day'
import { WeekAnswer } from './week-answer.tsx'
import { WeekPicture } from './week-picture.tsx'
import { WeekQuestion } from './week-question.tsx'

const KEPT = ['day', 'job', 'town', 'kind', 'people', 'minutes'] as const

/** When a crew could be in a town, over one week. What is asked stands in the address. */
export function Week() {
  const display = useDisplay()
  const { api } = useSession()
  const { day, today } = useAskedDay()
  const router = useRouter()
  const query = useSearchParams()
  const kept: Partial<Record<(typeof KEPT)[number], string>> = Object.fromEntries(
    KEPT.flatMap((name) => (query.get(name) ? [[name, query.get(name) ?? '']] : [])),
  )
  const { job: jobId, kind, ...asked } = kept
  const input = { ...asked, jobId, kind: jobKinds.find((one) => one === kind), day }
  const week = useQuery(api.week.towns.queryOptions({ input, placeholderData: keepPreviousData }))
  const address = (changes: Record<string, string>) => {
    const next = new URLSearchParams(Object.entries({ ...kept, ...changes }).filter(([, value]) => value !== ''))
    return `/week?${next}`
  }
  const { data } = week
  const [first, last] = [data?.days[0], data?.days.at(-1)]
  return (
    <>
      <PageHead
        title={data ? <WeekQuestion data={data} onChange={(changes) => router.replace(address(changes), { scroll: false })} /> : 'Week'}
        lead={
          first && last ? `${formatDays(first, last, display)}. With the drives there and on, and every other visit at its time.` : null
        }
        actions={
          <nav aria-label="Weeks" className="flex flex-wrap gap-2 print:hidden">
            <LinkButton href={address({ day: addDays(day, -7) })} link={Link}>
              ← Week before
            </LinkButton>
            {first && last && today >= first && today <= addDays(first, 6) ? null : (
              <LinkButton href={address({ day: today })} link={Link}>
                This week
              </LinkButton>
            )}
            <LinkButton href={address({ day: addDays(day, 7) })} link={Link}>
              Next week →
            </LinkButton>
          </nav>
        }
      />
      {week.error ? <Problem happened={readFailure(week.error).message} onRetry={() => void week.refetch()} /> : null}
      {week.isPending ? <Skeleton lines={6} label="Looking for places" /> : null}
      {data && data.towns.length === 0 ? (
        <p>
          No site has a town yet.{' '}
          <TextLink href="/sites/new" link={Link}>
            Add a site
          </TextLink>{' '}
          with its address, and it stands here.
        </p>
      ) : null}
      {data && data.towns.length > 0 ? (
        <>
          <WeekAnswer data={data} jobId={jobId ?? null} address={address} />
          <WeekPicture data={data} address={(town) => address({ town })} />
        </>
      ) : null}
    </>
  )
}
