'use client'
import { type JobKind, jobKinds, jobKindWords } from '@almanac/records/job-kind'
import { Button } from '@almanac/ui/button'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextArea } from '@almanac/ui/text-area'
import { TextLink } from '@almanac/ui/text-link'
import { readNumber } from '@almanac/units/read-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { type FormEvent, useState } from 'react'
import { bedWords } from '@/client/bed-facts-words'
import { readFailure } from '@/client/failure'
import { NoSiteChosen } from '@/client/no-site-chosen'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useToday } from '@/client/use-today'
import { JobFields, type JobTexts, readJobFields } from './job-fields.tsx'

const GAPS = [
  { value: '0', label: 'nothing: same day is fine' },
  { value: '1', label: 'a day' },
  { value: '2', label: '2 days' },
  { value: '7', label: 'a week' },
  { value: '28', label: 'four weeks' },
]

/** A job of any kind for a site; length and crew follow from kind and tank where nobody says otherwise. `after`: the job it follows, for work of several visits. */
export function NewJobForm({ siteId, bedId, wanted, after }: { siteId: string; bedId: string; wanted?: string; after?: string }) {
  const { api, me } = useSession()
  const today = useToday()
  const router = useRouter()
  const [kind, setKind] = useState<JobKind>(jobKinds.find((one) => one === wanted) ?? (bedId ? 'rebed' : 'annual-visit'))
  const [bed, setBed] = useState(bedId)
  const [leastDays, setLeastDays] = useState('1')
  const { values, field } = useFields<JobTexts>(() => ({ minutes: '', people: '', vehicle: '', earliest: '', latest: '', notes: '' }))
  const choices = useQuery(api.jobs.choices.queryOptions({ input: { siteId }, enabled: siteId !== '' }))
  const propose = useCommand(api.jobs.proposeOne.mutationOptions(), { onDone: ({ jobId }) => router.push(`/jobs/${jobId}`) })
  if (siteId === '') return <NoSiteChosen button="Add a job" />
  const beds = (choices.data?.softeners ?? []).flatMap((softener) => softener.beds.map((one) => ({ softener, one })))
  const chosen = beds.find(({ one }) => one.bedId === bed) ?? (beds.length === 1 ? beds[0] : undefined)
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const { minutes, crewSize, needsVehicle, dueEarliest, dueLatest, notes } = readJobFields(values)
    propose.send({
      siteId,
      softenerId: chosen?.softener.id ?? choices.data?.softeners[0]?.id,
      bedId: chosen?.one.bedId,
      kind,
      ...{ minutes: minutes ?? undefined, crewSize: crewSize ?? undefined, needsVehicle },
      ...{ dueEarliest: dueEarliest ?? undefined, dueLatest: dueLatest ?? undefined, notes: notes ?? undefined },
      after: after ? { jobId: after, leastDays: readNumber(leastDays) ?? 0 } : undefined,
    })
  }
  const failure = choices.error ?? propose.error
  return (
    <>
      <PageHead
        title={after ? 'Add a follow-up visit' : 'Add a job'}
        above={
          <TextLink href={`/sites/${siteId}`} link={Link}>
            {choices.data?.siteLabel ?? 'Site'}
          </TextLink>
        }
        lead="Then book it on a day sheet. Length and people follow from its kind and tank, unless you say."
      />
      {failure ? <Problem happened={readFailure(failure).message} kept="What you typed is still in the form." /> : null}
      {choices.isPending ? <Skeleton lines={5} label="Loading the site" /> : null}
      {choices.isSuccess ? (
        <form onSubmit={submit} className="flex max-w-md flex-col gap-4">
          <Select
            label="Kind"
            value={kind}
            onChange={(event) => setKind(jobKinds.find((one) => one === event.target.value) ?? 'repair')}
            choices={jobKinds.map((one) => ({ value: one, label: jobKindWords[one] }))}
          />
          {beds.length > 1 ? (
            <Select
              label="Bed"
              value={bed}
              none="the whole softener"
              onChange={(event) => setBed(event.target.value)}
              choices={beds.map(({ softener, one }, i) => ({
                value: one.bedId,
                label: `${softener.label}, tank ${i + 1}: ${bedWords(one, me.company) ?? 'size not known'}${one.openRebedJobId ? ' (rebed open)' : ''}`,
              }))}
            />
          ) : null}
          <JobFields field={field} usual minutes={null} today={today} />
          {after ? (
            <Select
              label="Follows the other visit by at least"
              value={leastDays}
              onChange={(event) => setLeastDays(event.target.value)}
              choices={GAPS}
            />
          ) : null}
          <TextArea label="Note for the crew" {...field('notes')} />
          <Button kind="ink" type="submit" busy={propose.isPending} busyLabel="Proposing">
            Add the job
          </Button>
        </form>
      ) : null}
    </>
  )
}
