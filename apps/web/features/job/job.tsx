'use client'
import { agreementKindWords } from '@almanac/records/agreement'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { thumbOf } from '@almanac/softener/rebed/thumb-of-record'
import { BedThumb } from '@almanac/ui/bed-thumb'
import { DefinitionList } from '@almanac/ui/definition-list'
import { JobStateWord } from '@almanac/ui/job-state-word'
import { LinkButton } from '@almanac/ui/link-button'
import { PageHead } from '@almanac/ui/page-head'
import { PrintButton } from '@almanac/ui/print-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatWeightLb } from '@almanac/units/format'
import { formatDuration } from '@almanac/units/format-clock'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { bedWords } from '@/client/bed-facts-words'
import { readFailure } from '@/client/failure'
import { dueWords, peopleWords, weekRiskWords, windowWords } from '@/client/job-words'
import { usePermission, useSession } from '@/client/providers'
import { useChance } from '@/client/use-chance'
import { useJobNote } from '@/client/use-job-note'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { JobProof } from '@/client/visit-proof'
import { WhomLine } from '@/client/whom-line'
import { BestPlaces } from './best-places.tsx'
import { JobActions } from './job-actions.tsx'
import { FollowsLink, usuallyWords, VisitTime } from './job-parts.tsx'
import { Materials } from './materials.tsx'
import { OfferTimes } from './offer-times.tsx'
import { PromiseTime } from './promise-time.tsx'

/** One job: what, where, how pressing, the kit in a line, where it could go, and the visits so far. */
export function Job({ jobId }: { jobId: string }) {
  const firm = useRebedFirm()
  const [words, kinds, outcomes] = [useWords('job'), useWords('jobKind'), useWords('outcome')]
  const chance = useChance()
  const noteOf = useJobNote()
  const { api, me } = useSession()
  const today = useToday()
  const display = me.company
  const speaking = { words, display }
  const mayBook = usePermission('book:visit')
  const query = useQuery(api.jobs.get.queryOptions({ input: { jobId } }))
  const job = query.data
  if (query.error) return <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} />
  if (!job) return <Skeleton lines={10} label={words('loading')} />
  const note = noteOf(job)
  const kit = job.kind === 'rebed' && job.bed ? kitOf(job.bed, firm) : null
  const risk = weekRiskWords(job.kind, job.forecast?.chance3Months ?? null, speaking)
  const chanceOf = (share: number | null) => (share === null ? '?' : chance(share))
  const placed = job.state === 'proposed' || job.state === 'booked'
  const overdue = placed && job.dueLatest !== null && job.dueLatest < today
  return (
    <>
      <PageHead
        above={
          <TextLink href="/jobs" link={Link}>
            {words('title')}
          </TextLink>
        }
        title={words('at', { kind: kinds(job.kind), site: job.siteLabel })}
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
      {job.stateReason ? <p className="mb-4">{words('reason', { reason: job.stateReason })}</p> : null}
      <div className="grid gap-x-12 gap-y-8 lg:grid-cols-2">
        <div>
          <DefinitionList
            facts={[
              {
                name: words('site'),
                value: (
                  <TextLink href={`/sites/${job.siteId}`} link={Link}>
                    {[job.siteLabel, job.town].filter(Boolean).join(', ')}
                  </TextLink>
                ),
              },
              ...(job.accessNotes ? [{ name: words('access'), value: job.accessNotes }] : []),
              {
                name: words('bed'),
                value: job.bed ? (
                  <span className="inline-flex items-center gap-3">
                    <BedThumb thumb={thumbOf(job.bed, firm)} />
                    <TextLink href={`/beds/${job.bed.bedId}`} link={Link}>
                      {bedWords(job.bed, display) ?? words('sizeUnknown')}
                    </TextLink>
                  </span>
                ) : null,
              },
              {
                name: words('due'),
                value: [
                  windowWords(job.dueEarliest, job.dueLatest, speaking),
                  overdue ? dueWords(null, job.dueLatest, today, speaking) : null,
                ]
                  .filter(Boolean)
                  .join('; '),
              },
              {
                name: words('chance'),
                value: job.forecast
                  ? words('chances', { soon: chanceOf(job.forecast.chance3Months), year: chanceOf(job.forecast.chance12Months) })
                  : null,
              },
              ...(risk ? [{ name: words('waiting'), value: risk }] : []),
              {
                name: words('needs'),
                value: words('needsOnSite', { people: peopleWords(job.crewSize, words), length: formatDuration(job.minutes, display) }),
              },
              { name: words('usually'), value: usuallyWords(job.usually, words, display) },
              ...(job.follows ? [{ name: words('follows'), value: <FollowsLink follows={job.follows} /> }] : []),
              ...(job.turn && mayBook
                ? [{ name: 'By agreement', value: `${agreementKindWords[job.turn.kind]}, due ${formatDay(job.turn.dueDay, display)}` }]
                : []),
              ...(note ? [{ name: words('note'), value: note }] : []),
            ]}
          />
          {job.kind === 'delivery' ? <Materials job={job} mayChange={mayBook} /> : null}
          {kit ? (
            <Section title={words('kit')}>
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
                    {words('carryIn', { weight: formatWeightLb(kit.value.loadWeightLb, display) })}
                    <span className="print:hidden"> {words('fullKit')}</span>
                  </p>
                  {job.bed ? (
                    <p className="mt-3">
                      <LinkButton href={`/api/beds/${job.bed.bedId}/plan`} file>
                        {words('plan')}
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
          <Section title={words('visits')}>
            {job.visits.length === 0 ? <p className="text-soft">{words('noVisits')}</p> : null}
            <ul>
              {job.visits.map((visit) => (
                <li key={visit.id} className="flex flex-wrap gap-x-4 border-b border-line py-2">
                  <VisitTime visit={visit} linked={mayBook} />
                  <span>{visit.people.join(', ') || visit.crewName}</span>
                  <JobStateWord state={visit.state} />
                  {visit.outcome ? <span className="text-soft">{outcomes(visit.outcome).toLowerCase()}</span> : null}
                  <PromiseTime visit={visit} mayPromise={mayBook} />
                  {visit.notes ? <span className="basis-full text-small text-soft">{visit.notes}</span> : null}
                  {visit.extra ? (
                    <span className="basis-full text-small">{words('extra', { who: visit.extra.agreedWith, what: visit.extra.what })}</span>
                  ) : null}
                </li>
              ))}
            </ul>
            {job.followedBy.map((one) => (
              <p key={one.jobId} className="mt-2">
                {words.rich('followedBy', {
                  gap: words('gap', { days: one.leastDays }),
                  job: () => (
                    <TextLink href={`/jobs/${one.jobId}`} link={Link}>
                      {kinds(one.kind)}
                    </TextLink>
                  ),
                })}
              </p>
            ))}
            {mayBook && placed ? (
              <p className="mt-2 print:hidden">
                <TextLink
                  href={`/jobs/new?site=${job.siteId}${job.bed ? `&bed=${job.bed.bedId}` : ''}&kind=inspection&after=${job.id}`}
                  link={Link}
                >
                  {words('followUp')}
                </TextLink>
              </p>
            ) : null}
            {job.closedDay ? <p className="mt-2">{words('closed', { day: formatDay(job.closedDay, display) })}</p> : null}
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
