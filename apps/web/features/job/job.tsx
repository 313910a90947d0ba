'use client'
import type { JobPage } from '@almanac/contract/jobs'
import { agreementKindWords } from '@almanac/records/agreement'
import { jobKindWords } from '@almanac/records/job-kind'
import { visitOutcomeWords } from '@almanac/records/visit-outcome'
import { kitOf } from '@almanac/softener/rebed/rebed-of-record'
import { thumbOf } from '@almanac/softener/rebed/thumb-of-record'
import { BedThumb } from '@almanac/ui/bed-thumb'
import { DefinitionList } from '@almanac/ui/definition-list'
import { useDisplay } from '@almanac/ui/display'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatWeightLb } from '@almanac/units/format'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { formatDay, formatNearDay } from '@almanac/units/format-day'
import { formatChance, type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { bedWords } from '@/client/bed-facts-words'
import { readFailure } from '@/client/failure'
import { dueWords, peopleWords, weekRiskWords, windowWords } from '@/client/job-words'
import { usePermission, useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { JobProof } from '@/client/visit-proof'
import { WhomLine } from '@/client/whom-line'
import { BestPlaces } from './best-places.tsx'
import { JobActions } from './job-actions.tsx'
import { Materials } from './materials.tsx'
import { OfferTimes } from './offer-times.tsx'
import { PromiseTime } from './promise-time.tsx'

const chanceOrNone = (chance: number | null, display: NumberDisplay) => (chance === null ? null : formatChance(chance, display))

/** "2 h 40 min, eight of ten no longer than 3 h 10 min; from 42 of your visits and common practice; 3 not counted: …". */
const usuallyWords = ({ middle, longer, visits, leftOut }: JobPage['usually'], display: NumberDisplay) =>
  [
    `${formatDuration(middle, display)}, eight of ten no longer than ${formatDuration(longer, display)}`,
    visits === 0
      ? 'common practice, until visits are closed out on the tablet'
      : `from ${visits === 1 ? 'one' : showWhole(visits, display)} of your visits and common practice`,
    leftOut > 0 ? `${leftOut === 1 ? 'one' : showWhole(leftOut, display)} not counted: start or end is missing or can’t be right` : '',
  ]
    .filter(Boolean)
    .join('; ')

const gapWords = (days: number) => (days === 0 ? 'on the same day or later' : `at least ${days === 1 ? 'a day' : `${days} days`} later`)

/** The visit before, with its day. */
function FollowsLink({ follows }: { follows: NonNullable<JobPage['follows']> }) {
  const display = useDisplay()
  return (
    <>
      <TextLink href={`/jobs/${follows.jobId}`} link={Link}>
        {jobKindWords[follows.kind]}
      </TextLink>
      {follows.day ? ` of ${formatDay(follows.day, display)}` : ', which has no day yet'}; {gapWords(follows.leastDays)}
    </>
  )
}

/** One job: what, where, how pressing, the kit in a line, where it could go, and the visits so far. */
export function Job({ jobId }: { jobId: string }) {
  const firm = useRebedFirm()
  const { api, me } = useSession()
  const today = useToday()
  const display = me.company
  const mayBook = usePermission('book:visit')
  const query = useQuery(api.jobs.get.queryOptions({ input: { jobId } }))
  const job = query.data
  if (query.error) return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} />
  if (!job) return <Skeleton lines={10} label="Reading the job" />
  const kit = job.kind === 'rebed' && job.bed ? kitOf(job.bed, firm) : null
  const risk = weekRiskWords(job.kind, job.forecast?.chance3Months ?? null, display)
  const placed = job.state === 'proposed' || job.state === 'booked'
  const overdue = placed && job.dueLatest !== null && job.dueLatest < today
  return (
    <>
      <PageHead
        above={
          <TextLink href="/jobs" link={Link}>
            Jobs
          </TextLink>
        }
        title={`${jobKindWords[job.kind]} at ${job.siteLabel}`}
        lead={
          <span className="flex flex-wrap gap-x-4">
            <JobStateWord state={job.state} />
            <WhomLine whom={job.whom} />
          </span>
        }
        actions={
          <>
            {mayBook ? <JobActions job={job} /> : null}
            <PrintButton />
          </>
        }
      />
      {job.stateReason ? <p className="mb-4">Reason: {job.stateReason}</p> : null}
      <div className="grid gap-x-12 gap-y-8 lg:grid-cols-2">
        <div>
          <DefinitionList
            facts={[
              {
                name: 'Site',
                value: (
                  <TextLink href={`/sites/${job.siteId}`} link={Link}>
                    {[job.siteLabel, job.town].filter(Boolean).join(', ')}
                  </TextLink>
                ),
              },
              ...(job.accessNotes ? [{ name: 'Access', value: job.accessNotes }] : []),
              {
                name: 'Bed',
                value: job.bed ? (
                  <span className="inline-flex items-center gap-3">
                    <BedThumb thumb={thumbOf(job.bed, firm)} />
                    <TextLink href={`/beds/${job.bed.bedId}`} link={Link}>
                      {bedWords(job.bed, display) ?? 'size not known'}
                    </TextLink>
                  </span>
                ) : null,
              },
              {
                name: 'Due',
                value: [
                  windowWords(job.dueEarliest, job.dueLatest, display),
                  overdue ? dueWords(null, job.dueLatest, today, display) : null,
                ]
                  .filter(Boolean)
                  .join('; '),
              },
              {
                name: 'Chance of failure',
                value: job.forecast
                  ? `${chanceOrNone(job.forecast.chance3Months, display) ?? '?'} in 3 months, ${chanceOrNone(job.forecast.chance12Months, display) ?? '?'} in 12`
                  : null,
              },
              ...(risk ? [{ name: 'Risk of waiting', value: risk }] : []),
              { name: 'Needs', value: `${peopleWords(job.crewSize)}, ${formatDuration(job.minutes, display)} on site` },
              { name: 'Usually takes', value: usuallyWords(job.usually, display) },
              ...(job.follows ? [{ name: 'Follows', value: <FollowsLink follows={job.follows} /> }] : []),
              ...(job.turn
                ? [{ name: 'By agreement', value: `${agreementKindWords[job.turn.kind]}, due ${formatDay(job.turn.dueDay, display)}` }]
                : []),
              ...(job.notes ? [{ name: 'Note', value: job.notes }] : []),
            ]}
          />
          {job.kind === 'delivery' ? <Materials job={job} mayChange={mayBook} /> : null}
          {kit ? (
            <Section title="Kit">
              {kit.ok ? (
                <>
                  <ul>
                    {/* The heaviest lines on the screen; on paper all of them. */}
                    {kit.value.lines.map((line, at) => (
                      <li key={line.text} className={at < 4 ? undefined : 'hidden print:list-item'}>
                        {line.text}
                      </li>
                    ))}
                  </ul>
                  <p className="mt-2 text-soft">
                    {formatWeightLb(kit.value.loadWeightLb, display)} to carry in.
                    <span className="print:hidden"> The full kit is on the bed’s page and on the tablet.</span>
                  </p>
                  {job.bed ? (
                    <p className="mt-3">
                      <LinkButton href={`/api/beds/${job.bed.bedId}/plan`} file>
                        Rebed plan (PDF)
                      </LinkButton>
                    </p>
                  ) : null}
                </>
              ) : (
                <p>{kit.reason}</p>
              )}
            </Section>
          ) : null}
        </div>
        <div>
          <Section title="Visits">
            {job.visits.length === 0 ? <p className="text-soft">None yet.</p> : null}
            <ul>
              {job.visits.map((visit) => (
                <li key={visit.id} className="flex flex-wrap gap-x-4 border-b border-line py-2">
                  <TextLink href={`/day-sheets?day=${visit.day}&sheet=${visit.crewDayId}`} link={Link}>
                    {formatNearDay(visit.day, display)} {formatClock(visit.startsAt, display)}
                  </TextLink>
                  <span>{visit.people.join(', ') || visit.crewName}</span>
                  <JobStateWord state={visit.state} />
                  {visit.outcome ? <span className="text-soft">{visitOutcomeWords[visit.outcome].toLowerCase()}</span> : null}
                  <PromiseTime visit={visit} mayPromise={mayBook} />
                  {visit.notes ? <span className="basis-full text-small text-soft">{visit.notes}</span> : null}
                </li>
              ))}
            </ul>
            {job.followedBy.map((one) => (
              <p key={one.jobId} className="mt-2">
                Then{' '}
                <TextLink href={`/jobs/${one.jobId}`} link={Link}>
                  {jobKindWords[one.kind]}
                </TextLink>
                , {gapWords(one.leastDays)}.
              </p>
            ))}
            {mayBook && placed ? (
              <p className="mt-2 print:hidden">
                <TextLink
                  href={`/jobs/new?site=${job.siteId}${job.bed ? `&bed=${job.bed.bedId}` : ''}&kind=inspection&after=${job.id}`}
                  link={Link}
                >
                  Add a follow-up visit
                </TextLink>
              </p>
            ) : null}
            {job.closedDay ? <p className="mt-2">Closed on {formatDay(job.closedDay, display)}.</p> : null}
          </Section>
          <JobProof jobId={job.id} />
          {mayBook && placed ? (
            <div className="mt-8 print:hidden">
              {job.state === 'proposed' ? <OfferTimes job={job} /> : null}
              <BestPlaces job={job} />
            </div>
          ) : null}
        </div>
      </div>
    </>
  )
}
