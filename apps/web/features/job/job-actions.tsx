'use client'
import type { JobPage } from '@almanac/contract/jobs'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { Dialog } from '@almanac/ui/dialog'
import { Problem } from '@almanac/ui/problem'
import { TextArea } from '@almanac/ui/text-area'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { ChangeJob } from './change-job.tsx'

type Asking = 'hold' | 'call-off' | null

/** Holding, calling off and taking up again; the first two want a reason in words. */
export function JobActions({ job }: { job: JobPage }) {
  const { api } = useSession()
  const [asking, setAsking] = useState<Asking>(null)
  const [reason, setReason] = useState('')
  const [told, setTold] = useState(false)
  const promised = job.visits.some((visit) => visit.state === 'booked' && visit.promised !== null)
  const close = () => setAsking(null)
  const hold = useCommand(api.jobs.hold.mutationOptions(), { onDone: close })
  const callOff = useCommand(api.jobs.callOff.mutationOptions(), { onDone: close })
  const resume = useCommand(api.jobs.resume.mutationOptions())
  const failure = hold.error ?? callOff.error ?? resume.error
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const body = { jobId: job.id, version: job.version, reason, told }
    if (asking === 'hold') hold.send(body)
    else callOff.send(body)
  }
  const open = job.state === 'proposed' || job.state === 'booked'
  return (
    <>
      {open || job.state === 'held' ? <ChangeJob job={job} /> : null}
      {open ? <Button onClick={() => setAsking('hold')}>Hold</Button> : null}
      {open || job.state === 'held' ? <Button onClick={() => setAsking('call-off')}>Call off</Button> : null}
      {job.state === 'held' || job.state === 'called-off' ? (
        <Button kind="ink" busy={resume.isPending} onClick={() => resume.send({ jobId: job.id, version: job.version })}>
          Take off hold
        </Button>
      ) : null}
      {failure && !asking ? <Problem happened={readFailure(failure).message} /> : null}
      {asking ? (
        <Dialog open onClose={close} title={asking === 'hold' ? 'Hold this job' : 'Call this job off'}>
          <form onSubmit={submit} className="flex flex-col gap-4">
            <p className="text-soft">A booked visit comes off its day sheet; people and vehicle are free again.</p>
            <TextArea label="Why" value={reason} onChange={(event) => setReason(event.target.value)} required />
            {promised ? (
              <Checkbox
                label="The customer was promised this visit and knows it’s off. If not, they go on the list to call."
                checked={told}
                onChange={(event) => setTold(event.target.checked)}
              />
            ) : null}
            {failure ? <Problem happened={readFailure(failure).message} /> : null}
            <Button
              kind={asking === 'hold' ? 'ink' : 'danger'}
              type="submit"
              disabled={!reason.trim()}
              busy={hold.isPending || callOff.isPending}
            >
              {asking === 'hold' ? 'Hold' : 'Call off'}
            </Button>
          </form>
        </Dialog>
      ) : null}
    </>
  )
}
