'use client'
import type { RecordCall } from '@almanac/contract/calls'
import type { DueBed } from '@almanac/contract/due'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { useToast } from '@almanac/ui/toast'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatClock } from '@almanac/units/format-clock'
import { formatDay } from '@almanac/units/format-day'
import { readNumber } from '@almanac/units/read-number'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { FormDialog } from '@/client/form-dialog'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useToday } from '@/client/use-today'

const NO_ANSWER = 'No answer.'

/** "Is it still soft?" answered on the telephone, in the row: soft, hard since when, or nobody there. */
export function StillSoft({ bed }: { bed: DueBed }) {
  const { api, me } = useSession()
  const display = useDisplay()
  const today = useToday()
  const showToast = useToast()
  const mayCall = usePermission('record:call')
  const [asking, setAsking] = useState(false)
  const propose = useCommand(api.jobs.propose.mutationOptions(), {
    onDone: ({ results }) => {
      const refused = results.find((one) => one.status === 'refused')
      showToast({ text: refused?.status === 'refused' ? refused.reason : 'Call kept, rebed proposed.' })
    },
  })
  const addRebed = () => propose.send({ kind: 'rebed', beds: [{ bedId: bed.bedId }] })
  const record = useCommand(api.calls.record.mutationOptions(), { onDone: () => setAsking(false) })
  const call = (
    what: { stillSoft?: boolean; hardSinceDay?: string; words?: string },
    follows: RecordCall['follows'] = { what: 'nothing' },
  ) =>
    record.send({
      ...{ siteId: bed.siteId, softenerId: bed.softenerId, callerName: '', callerPhone: '', advised: '', words: what.words ?? '' },
      sees: what.hardSinceDay ? 'hard-water' : null,
      stillSoft: what.stillSoft ?? false,
      hardSinceDay: what.hardSinceDay ?? null,
      follows,
    })
  const failure = record.error ?? propose.error
  const problem = failure && !asking ? <Problem happened={readFailure(failure).message} /> : null
  const { answer } = bed
  if (answer?.hardSinceDay)
    return (
      <span>
        <span className="font-semibold">Hard since {formatDay(answer.hardSinceDay, display)}.</span>
        {mayCall ? (
          <Button kind="quiet" busy={propose.isPending} onClick={addRebed}>
            Propose the rebed<span className="sr-only"> for {bed.siteLabel}</span>
          </Button>
        ) : null}
        {problem}
      </span>
    )
  if (answer && dayIn(me.company.timeZone, answer.at) === today)
    return <span className="text-soft">No answer {formatClock(answer.at, display)}. Again tomorrow.</span>
  if (!mayCall) return null
  return (
    <span>
      <span className="inline-flex flex-wrap gap-1">
        <Button busy={record.isPending} onClick={() => call({ stillSoft: true })}>
          Soft<span className="sr-only">: {bed.siteLabel}</span>
        </Button>
        <Button onClick={() => setAsking(true)}>
          Hard<span className="sr-only">: {bed.siteLabel}</span>
        </Button>
        <Button busy={record.isPending} onClick={() => call({ words: NO_ANSWER }, { what: 'call-back', day: addDays(today, 1) })}>
          No answer<span className="sr-only">: {bed.siteLabel}</span>
        </Button>
      </span>
      {problem}
      {asking ? (
        <SinceWhen
          bed={bed}
          busy={record.isPending}
          error={record.error}
          onClose={() => setAsking(false)}
          onSend={(hardSinceDay, rebed) => {
            call({ hardSinceDay })
            if (rebed) addRebed()
          }}
        />
      ) : null}
    </span>
  )
}

/** How people say it, in days ago. */
const SINCE = [
  { value: '2', label: 'A few days' },
  { value: '21', label: 'A few weeks' },
  { value: '90', label: 'A few months' },
  { value: '180', label: 'Half a year' },
  { value: '365', label: 'A year' },
]

type Asking = { bed: DueBed; busy: boolean; error: unknown; onClose: () => void; onSend: (day: string, rebed: boolean) => void }

function SinceWhen({ bed, busy, error, onClose, onSend }: Asking) {
  const today = useToday()
  const [days, setDays] = useState('')
  const [rebed, setRebed] = useState('yes')
  return (
    <FormDialog
      title={`Hard water: ${bed.siteLabel}`}
      onClose={onClose}
      onSubmit={() => onSend(addDays(today, -(readNumber(days) ?? 0)), rebed === 'yes')}
      busy={busy}
      error={error}
      saveLabel="Keep call"
    >
      <ChoiceGroup label="Hard for about" required inline value={days} onChange={setDays} choices={SINCE} />
      <ChoiceGroup
        label="What follows"
        inline
        value={rebed}
        onChange={setRebed}
        choices={[
          { value: 'yes', label: 'A rebed' },
          { value: 'no', label: 'Nothing yet' },
        ]}
      />
    </FormDialog>
  )
}
