'use client'
import type { RecordCall } from '@almanac/contract/calls'
import type { DueBed } from '@almanac/contract/due'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { useToast } from '@almanac/ui/toast'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatClock } from '@almanac/units/format-clock'
import { formatMonth } from '@almanac/units/format-day'
import { useState } from 'react'
import { CallForm } from '@/client/call/call-form'
import { readFailure } from '@/client/failure'
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
      showToast({ text: refused?.status === 'refused' ? refused.reason : 'Rebed proposed.' })
    },
  })
  const addRebed = () => propose.send({ kind: 'rebed', beds: [{ bedId: bed.bedId }] })
  const record = useCommand(api.calls.record.mutationOptions())
  const call = (words: string, stillSoft: boolean, follows: RecordCall['follows']) =>
    record.send({
      ...{ siteId: bed.siteId, softenerId: bed.softenerId, callerName: '', callerPhone: '', sees: null, advised: '' },
      ...{ words, stillSoft, hardSinceDay: null, follows },
    })
  const failure = record.error ?? propose.error
  const problem = failure ? <Problem happened={readFailure(failure).message} /> : null
  const { answer } = bed
  if (answer?.hardSinceDay)
    return (
      <span>
        <span className="font-semibold">Hard since about {formatMonth(answer.hardSinceDay, display)}.</span>
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
        <Button busy={record.isPending} onClick={() => call('', true, { what: 'nothing' })}>
          Soft<span className="sr-only">: {bed.siteLabel}</span>
        </Button>
        <Button onClick={() => setAsking(true)}>
          Hard<span className="sr-only">: {bed.siteLabel}</span>
        </Button>
        <Button busy={record.isPending} onClick={() => call(NO_ANSWER, false, { what: 'call-back', day: addDays(today, 1) })}>
          No answer<span className="sr-only">: {bed.siteLabel}</span>
        </Button>
      </span>
      {problem}
      {asking ? (
        <CallForm startSiteId={bed.siteId} hardAt={{ softenerId: bed.softenerId, follows: 'rebed' }} onClose={() => setAsking(false)} />
      ) : null}
    </span>
  )
}
