'use client'
import type { PlanPage } from '@almanac/contract/plans'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Empty } from '@almanac/ui/empty'
import { LinkButton } from '@almanac/ui/link-button'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatDays } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useSearchParams } from 'next/navigation'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { PlanChanges } from './plan-changes.tsx'
import { PlanCrews } from './plan-crews.tsx'
import { PlanTotalsTable } from './plan-totals.tsx'

const TITLES: Record<PlanPage['asked']['kind'], string> = {
  week: 'A plan for the days ahead',
  crews: 'Who goes with whom',
  'sheet-off': 'Crew out',
  'fewer-people': 'When people are missing',
  'other-vehicle': 'When the vehicle is broken',
}

/** How often a plan that is being worked out is looked at, beside the live updates. */
const LOOK_MS = 1500

/** A plan worked out in the background: how far it is, then what it would change, to be accepted in whole or in part. */
export function Plan() {
  const display = useDisplay()
  const { api } = useSession()
  const planId = useSearchParams().get('id') ?? ''
  const plan = useQuery({
    ...api.plans.get.queryOptions({ input: { planId } }),
    enabled: planId !== '',
    refetchInterval: (query) => (query.state.data?.state === 'running' ? LOOK_MS : false),
  })
  const stop = useCommand(api.plans.stop.mutationOptions())
  const failure = plan.error ?? stop.error
  const page = plan.data
  if (planId === '')
    return (
      <Empty
        title="No plan chosen"
        action={
          <LinkButton href="/day-sheets" kind="ink" link={Link}>
            Open the day sheets
          </LinkButton>
        }
      >
        Choose “Plan the week” or “Who goes with whom?” under the day’s sheets.
      </Empty>
    )
  return (
    <>
      <PageHead
        above={
          <TextLink href={page ? `/day-sheets?day=${page.fromDay}` : '/day-sheets'} link={Link}>
            Day sheets
          </TextLink>
        }
        title={page ? TITLES[page.asked.kind] : 'Plan'}
        lead={page ? `${formatDays(page.fromDay, page.untilDay, display)}. Nothing changes until you accept.` : undefined}
      />
      {failure ? <Problem happened={readFailure(failure).message} onRetry={() => void plan.refetch()} /> : null}
      {!page && !failure ? <Skeleton lines={6} label="Loading the plan" /> : null}
      {page?.state === 'running' ? (
        <Notice
          action={
            <Button busy={stop.isPending} onClick={() => stop.send({ planId: page.id, version: page.version })}>
              Stop
            </Button>
          }
        >
          Planning. It takes about ten seconds; you can leave this page and come back. If the background worker stops, planning restarts
          automatically within half a minute.
        </Notice>
      ) : null}
      {page?.state === 'stopped' ? <p>This plan was stopped. Nothing was changed; start another from the day sheets.</p> : null}
      {page?.state === 'failed' ? <Problem happened={page.failure ?? 'This plan could not be made. Nothing was changed.'} /> : null}
      {page?.state === 'accepted' && !page.crews ? (
        <Notice kind="done">The changes you chose are on the day sheets, and the crews see them.</Notice>
      ) : null}
      {page && (page.state === 'ready' || page.state === 'accepted') ? (
        page.crews ? (
          <Formed page={page} crews={page.crews} />
        ) : (
          <Outcome page={page} />
        )
      ) : null}
    </>
  )
}

/** Who goes with whom, beside what the day would be with everybody alone. */
function Formed({ page, crews }: { page: PlanPage; crews: NonNullable<PlanPage['crews']> }) {
  return (
    <>
      {page.before && page.after ? (
        <PlanTotalsTable
          before={page.before}
          after={page.after}
          caption="The day with everyone alone and with these crews"
          heads={['Everyone alone', 'These crews']}
        />
      ) : null}
      <PlanCrews page={page} crews={crews} />
    </>
  )
}

function Outcome({ page }: { page: PlanPage }) {
  return (
    <>
      <ul className="mb-6 max-w-[75ch]">
        {page.sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {page.state === 'ready' && page.taken > 0 ? (
        <Notice kind="done">
          {page.taken === 1 ? 'One change is' : `${page.taken} changes are`} on the day sheets, and the crews see them. What you left is
          still open.
        </Notice>
      ) : null}
      {page.before && page.after && (page.taken === 0 || page.state === 'accepted') ? (
        <PlanTotalsTable before={page.before} after={page.after} />
      ) : null}
      {page.state === 'ready' ? <PlanChanges page={page} /> : null}
      {page.waiting.length > 0 ? (
        <details className="mt-6">
          <summary className="min-h-6 cursor-pointer">
            {page.waiting.length === 1 ? 'One job stays' : `${page.waiting.length} jobs stay`} waiting, and why
          </summary>
          <ul className="mt-2 max-w-[75ch]">
            {page.waiting.map((one) => (
              <li key={one.jobId} className="border-b border-line py-2">
                <TextLink href={`/jobs/${one.jobId}`} link={Link}>
                  Job
                </TextLink>
                : {one.why}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      {page.notes.length > 0 ? (
        <details className="mt-3">
          <summary className="min-h-6 cursor-pointer">What the plan doesn’t know</summary>
          <ul className="mt-2 max-w-[75ch] text-soft">
            {page.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      ) : null}
    </>
  )
}
