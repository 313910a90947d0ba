'use client'
import type { PlanCrew, PlanPage } from '@almanac/contract/plans'
import { jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { TextLink } from '@almanac/ui/text-link'
import { formatClockTime } from '@almanac/units/format-clock'
import Link from 'next/link'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const namesOf = (crew: PlanCrew) => crew.people.map((one) => one.name).join(' and ')

/** Who goes with whom: each crew with its vehicle, hours and what it could do that day; those that are ticked get their sheets. */
export function PlanCrews({ page, crews }: { page: PlanPage; crews: NonNullable<PlanPage['crews']> }) {
  const { api } = useSession()
  // Whoever has nothing to do that day needs no sheet, unless somebody says so.
  const [left, setLeft] = useState<ReadonlySet<number>>(
    () => new Set(crews.formed.flatMap((crew, at) => (crew.jobs.length === 0 ? [at] : []))),
  )
  const open = useCommand(api.plans.openCrews.mutationOptions())
  const chosen = crews.formed.flatMap((crew, at) => (crew.opened || left.has(at) ? [] : [at]))
  const submit = (event: FormEvent) => {
    event.preventDefault()
    open.send({ planId: page.id, version: page.version, crews: chosen })
  }
  const tick = (at: number, on: boolean) => {
    const next = new Set(left)
    if (on) next.delete(at)
    else next.add(at)
    setLeft(next)
  }
  return (
    <form onSubmit={submit}>
      <Section title={crews.formed.length === 1 ? 'One crew' : `${crews.formed.length} crews`}>
        <ul className="max-w-[75ch]">
          {crews.formed.map((crew, at) => (
            <li key={crew.vehicle.id} className="border-b border-line py-3">
              <Crew crew={crew} checked={!left.has(at)} onTick={(on) => tick(at, on)} />
            </li>
          ))}
        </ul>
        {crews.spare.length > 0 ? (
          <p className="mt-3">
            Not needed that day: {crews.spare.join(', ')}. No vehicle is free for them, or another pair gets more done.
          </p>
        ) : null}
        <p className="mt-3 text-muted">
          The best of {crews.tried} ways to divide them. The jobs are what each crew could do; nothing is booked with its sheet.
        </p>
      </Section>
      {open.error ? <Problem happened={readFailure(open.error).message} /> : null}
      <div className="mt-6 flex flex-wrap gap-3">
        {page.state === 'ready' ? (
          <Button kind="ink" type="submit" busy={open.isPending} disabled={chosen.length === 0}>
            {chosen.length === 1 ? 'Open this sheet' : `Open ${chosen.length} sheets`}
          </Button>
        ) : null}
        {crews.formed.some((crew) => crew.opened) ? (
          <LinkButton href={`/day-sheets?day=${page.fromDay}`} link={Link}>
            To the day’s sheets, to plan their visits
          </LinkButton>
        ) : null}
      </div>
    </form>
  )
}

function Crew({ crew, checked, onTick }: { crew: PlanCrew; checked: boolean; onTick: (on: boolean) => void }) {
  const display = useDisplay()
  const hours = `${formatClockTime(crew.from, display)} to ${formatClockTime(crew.until, display)}`
  const who = `${namesOf(crew)}, with ${crew.vehicle.name}, ${hours}`
  return (
    <>
      {crew.opened ? (
        <p className="font-medium">{who}: its sheet is open.</p>
      ) : (
        <Checkbox label={who} checked={checked} onChange={(event) => onTick(event.target.checked)} />
      )}
      {crew.jobs.length > 0 ? (
        <ol className="mt-1 pl-7">
          {crew.jobs.map((job) => (
            <li key={job.jobId}>
              <TextLink href={`/jobs/${job.jobId}`} link={Link}>
                {jobKindWords[job.kind]}
              </TextLink>
              , {[job.siteLabel, job.town].filter(Boolean).join(', ')}
            </li>
          ))}
        </ol>
      ) : (
        <p className="mt-1 pl-7 text-muted">No waiting job is left for this crew.</p>
      )}
    </>
  )
}
