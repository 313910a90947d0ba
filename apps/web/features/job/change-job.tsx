'use client'
import type { JobPage } from '@almanac/contract/jobs'
import type { Unusual } from '@almanac/records/day-plan'
import { Button } from '@almanac/ui/button'
import { Notice } from '@almanac/ui/notice'
import { TextArea } from '@almanac/ui/text-area'
import { useToast } from '@almanac/ui/toast'
import { useState } from 'react'
import { readFailure, versionNow } from '@/client/failure'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'
import { useToday } from '@/client/use-today'
import { JobFields, type JobTexts, readJobFields } from './job-fields.tsx'

const NAMES = {
  ...{ minutes: 'Length, minutes', crewSize: 'People', needsVehicle: 'Needs a vehicle', notes: 'Note for the crew' },
  ...{ dueEarliest: 'Not before', dueLatest: 'To be done by' },
}

/** Changes what a job asks for; a booked visit keeps its beginning and lasts as long as is said here. */
export function ChangeJob({ job }: { job: JobPage }) {
  const [open, setOpen] = useState(false)
  return (
    <>
      <Button onClick={() => setOpen(true)}>Change job</Button>
      {open ? <ChangeForm job={job} onClose={() => setOpen(false)} /> : null}
    </>
  )
}

function ChangeForm({ job, onClose }: { job: JobPage; onClose: () => void }) {
  const { api } = useSession()
  const today = useToday()
  const showToast = useToast()
  // What the person saw when they opened the form: a change by someone else must not slip in under their hand.
  const [seen] = useState(job)
  const { values, field } = useFields<JobTexts>(() => ({
    ...{ minutes: String(seen.minutes), people: String(seen.crewSize), notes: seen.notes ?? '' },
    ...{ vehicle: seen.needsVehicle === null ? '' : seen.needsVehicle ? 'yes' : 'no' },
    ...{ earliest: seen.dueEarliest ?? '', latest: seen.dueLatest ?? '' },
  }))
  const change = useCommand(api.jobs.change.mutationOptions(), {
    onDone: () => {
      showToast({ text: 'The job is changed.' })
      onClose()
    },
  })
  const failure = change.error ? readFailure(change.error) : null
  const unusual = (failure?.detail.confirm as Unusual[] | undefined) ?? []
  const send = (version: number) => {
    const { minutes, crewSize, ...rest } = readJobFields(values)
    const size = { minutes: minutes ?? seen.minutes, crewSize: crewSize ?? seen.crewSize }
    change.send({ jobId: seen.id, version, ...size, ...rest, confirmed: unusual })
  }
  return (
    <FormDialog
      title="Change this job"
      lead={seen.state === 'booked' ? 'Its visit keeps its start. A new length moves its end.' : undefined}
      onClose={onClose}
      onSubmit={() => send(seen.version)}
      busy={change.isPending}
      error={unusual.length > 0 ? null : change.error}
      saveLabel={unusual.length > 0 ? 'Save anyway' : undefined}
      names={NAMES}
      onKeepMine={() => failure && send(versionNow(failure))}
    >
      {unusual.length > 0 && failure ? <Notice kind="mind">{failure.message}</Notice> : null}
      <JobFields field={field} usual={false} minutes={seen.minutes} today={today} />
      <TextArea label="Note for the crew" {...field('notes')} maxLength={4000} />
    </FormDialog>
  )
}
