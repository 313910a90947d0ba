'use client'
import type { SheetVisit } from '@almanac/contract/day-sheets'
import { Button } from '@almanac/ui/button'
import { TimeInput } from '@almanac/ui/time-input'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { useState } from 'react'
import { FormDialog } from '@/client/form-dialog'
import { jobName } from '@/client/job-words'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useFields } from '@/client/use-fields'

/** Until when a visit of today lasts, as its crew says on the phone. */
export function SayUntil({ visit }: { visit: SheetVisit }) {
  const [open, setOpen] = useState(false)
  return (
    <>
      <Button kind="quiet" onClick={() => setOpen(true)} aria-label={`Say until when: ${jobName(visit)}`}>
        Until…
      </Button>
      {open ? <UntilForm visit={visit} onClose={() => setOpen(false)} /> : null}
    </>
  )
}

function UntilForm({ visit, onClose }: { visit: SheetVisit; onClose: () => void }) {
  const { api, me } = useSession()
  const say = useCommand(api.jobs.sayUntil.mutationOptions(), { onDone: onClose })
  const { values, field } = useFields(() => ({ until: clockIn(me.company.timeZone, visit.runningUntil ?? visit.endsAt) }))
  return (
    <FormDialog
      title="This visit lasts until"
      lead="Nobody is moved by it. The day’s page says who comes later, and whom to call."
      onClose={onClose}
      onSubmit={() => say.send({ visitId: visit.id, version: visit.version, until: values.until })}
      busy={say.isPending}
      error={say.error}
    >
      <TimeInput label="Until" {...field('until')} required />
      {visit.runningUntil ? (
        <Button onClick={() => say.send({ visitId: visit.id, version: visit.version, until: null })} busy={say.isPending}>
          As planned after all
        </Button>
      ) : null}
    </FormDialog>
  )
}
