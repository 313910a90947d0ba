import type { JobLine } from '@almanac/contract/site-facts'
import { useDisplay } from '@almanac/ui/display'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'

/** Jobs that are still to be done, a line each. */
export function JobLines({ jobs, none }: { jobs: readonly JobLine[]; none: string }) {
  const display = useDisplay()
  const [kinds, words] = [useWords('jobKind'), useWords('site')]
  if (jobs.length === 0) return <p className="text-soft">{none}</p>
  return (
    <ul className="border-t border-line">
      {jobs.map((job) => (
        <li key={job.id} className="flex flex-wrap items-baseline justify-between gap-x-4 border-b border-line py-2">
          <TextLink href={`/jobs/${job.id}`} link={Link}>
            {kinds(job.kind)}
          </TextLink>
          <span className="text-small">
            <JobStateWord state={job.state} />
            <span className="text-soft">
              {job.visitDay
                ? `, ${formatDay(job.visitDay, display)}`
                : job.dueLatest
                  ? `, ${words('dueBy', { day: formatDay(job.dueLatest, display) })}`
                  : ''}
            </span>
          </span>
        </li>
      ))}
    </ul>
  )
}
