'use client'
import type { JobPage } from '@almanac/contract/jobs'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { TimeInput } from '@almanac/ui/time-input'
import { useToast } from '@almanac/ui/toast'
import { clockIn, dayIn } from '@almanac/units/calendar/zone-clock'
import { formatClocks } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { FormDialog } from '@/client/form-dialog'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'

type Visit = JobPage['visits'][number]

/** What is promised by telephone where nobody says otherwise: from the visit's own hour for two hours. */
const WINDOW_MINUTES = 120
const MINUTE_MS = 60_000

function PromiseForm({ visit, onClose }: { visit: Visit; onClose: () => void }) {
  const { api, me } = useSession()
  const promise = useCommand(api.windows.promise.mutationOptions(), { onDone: onClose })
  const { values, field } = useFields(() => {
    const from = clockIn(me.company.timeZone, visit.startsAt)
    const until = clockIn(me.company.timeZone, new Date(Date.parse(visit.startsAt) + WINDOW_MINUTES * MINUTE_MS))
    return { from, until: until > from ? until : '23:59' }
  })
  return (
    <FormDialog
      title="Promise a time"
      lead="What you told the customer by phone. It’s kept when plans change, or they go on the list to call."
      onClose={onClose}
      onSubmit={() => promise.send({ visitId: visit.id, version: visit.version, ...values })}
      busy={promise.isPending}
      error={promise.error}
      saveLabel="Promise"
    >
      <TimeInput label="From" {...field('from')} required />
      <TimeInput label="To" {...field('until')} required />
    </FormDialog>
  )
}

/** What the customer was promised of a visit, by whom and how; for one that is booked, the press that promises by telephone. */
export function PromiseTime({ visit, mayPromise }: { visit: Visit; mayPromise: boolean }) {
  const display = useDisplay()
  const { api } = useSession()
  const words = useWords('job')
  const [open, setOpen] = useState(false)
  const [openedAt] = useState(() => Date.now())
  const showToast = useToast()
  const miss = useCommand(api.jobs.missVisit.mutationOptions(), {
    onDone: () => showToast({ text: 'Off the sheet. The customer is on the list to call today.' }),
  })
  const { promised } = visit
  const lost = promised !== null && (visit.startsAt < promised.from || visit.startsAt > promised.until)
  const day = promised && dayIn(display.timeZone, promised.from)
  const times = promised && formatClocks(promised.from, promised.until, display)
  const made = promised && day && times ? words('promised', { by: promised.by, day: formatNearDay(day, display), times }) : ''
  const promise = promised?.person ? words('promisedBy', { promise: made, person: promised.person }) : made
  return (
    <span className="flex basis-full flex-wrap items-baseline gap-x-4">
      {promise ? (
        <span className={lost ? 'font-semibold text-danger' : 'text-soft'}>{lost ? words('notKept', { promise }) : promise}</span>
      ) : null}
      {mayPromise && visit.state === 'booked' ? (
        <span className="print:hidden">
          <Button kind="quiet" onClick={() => setOpen(true)}>
            {words(promised ? 'promiseAnother' : 'promise')}
          </Button>
        </span>
      ) : null}
      {mayPromise && visit.state === 'booked' && Date.parse(visit.startsAt) < openedAt ? (
        <span className="print:hidden">
          <Button kind="quiet" onClick={() => miss.send({ visitId: visit.id, version: visit.version })} busy={miss.isPending}>
            {words('missed')}
          </Button>
        </span>
      ) : null}
      {miss.error ? <Problem happened={readFailure(miss.error).message} /> : null}
      {open ? <PromiseForm visit={visit} onClose={() => setOpen(false)} /> : null}
    </span>
  )
}
