'use client'
import type { CloseOutInput, VisitPage } from '@almanac/contract/visits'
import type { VisitAskId } from '@almanac/records/procedure-ask'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { missingForCloseOut } from '@almanac/service-rules/close-out/completeness'
import { outcomeFacts } from '@almanac/service-rules/jobs/visit-outcomes'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DayInput } from '@almanac/ui/day-input'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatHardnessGpg } from '@almanac/units/format'
import type { ClockDisplay } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import { useMutation } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import { v7 } from 'uuid'
import { readFailure } from '@/client/failure'
import { useFetchChanged } from '@/client/fetch-changed'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { NewBedFields, OldBedFields } from './bed-fields.tsx'
import { type Draft, entered, type ShownDraft } from './draft.ts'
import { PartsUsed } from './parts-used.tsx'
import { shownDraft } from './prefilled.ts'
import { changesBed } from './procedure-of.ts'
import { recordOf } from './record-of-draft.ts'
import { suggestedParts } from './suggested-parts.ts'
import type { DraftHandle } from './use-draft.ts'
import { tankOfVisit, type VisitReading } from './visit-amounts.ts'

/** What to look at where work, or its closing, ran over midnight. */
function dayHint({ startedAt, finishedAt }: ShownDraft, display: ClockDisplay, now: string, words: Words<'closeOut'>): string | undefined {
  const [begun, ended, sent] = [startedAt, finishedAt, now].map((at) => (at === null ? null : dayIn(display.timeZone, at)))
  if (begun && ended && begun !== ended)
    return words('begunAndFinished', { begun: formatNearDay(begun, display), finished: formatNearDay(ended, display) })
  return begun && sent && begun !== sent ? words('begunOn', { begun: formatNearDay(begun, display) }) : undefined
}

type Props = { visit: VisitPage; procedure: Procedure; handle: DraftHandle }

/** The end of a visit: its outcome and what that outcome demands; what is missing is listed in plain sentences before anything is sent. */
export function CloseOutForm({ visit, procedure, handle }: Props) {
  const { api, me, figures } = useSession()
  const words = useWords('closeOut')
  const outcomes = useWords('outcome')
  const meanings = useWords('outcomeMeaning')
  const lacking = useWords('lacking')
  const fetchChanged = useFetchChanged()
  const { change, clear } = handle
  const units = me.company.unitSystem
  const today = useToday()
  const now = new Date().toISOString()
  const draft = shownDraft(handle.draft, me.company.timeZone, now)
  const firm = useRebedFirm()
  const [amounts, amountNames] = [useWords('amount'), useWords('amountName')]
  const guessed = useMemo(() => suggestedParts(visit, firm), [visit, firm])
  const parts = draft.parts ?? (draft.outcome === 'done' ? guessed : [])
  const [tried, setTried] = useState(false)
  const by: VisitReading = { locale: me.company.locale, units, tank: tankOfVisit(visit, me.company) }
  const record = recordOf(visit, draft, parts, now, by)
  const missing = missingForCloseOut(record, {
    outletLimitGpg: figures.outletLimitGpg,
    display: me.company,
    today,
    tank: by.tank,
    words: lacking,
    outcomes,
    amounts,
    amountNames,
  })
  const send = useMutation(
    api.visits.closeOut.mutationOptions({
      onSuccess: async () => {
        clear()
        await fetchChanged('visits.closeOut')
      },
    }),
  )
  const failure = send.error ? readFailure(send.error) : null
  const finish = () => {
    setTried(true)
    if (missing.length > 0) return
    const commandId = draft.commandId ?? v7()
    // Kept with its id: sent again it is the same record, however much later.
    change({ commandId, finishedAt: record.finishedAt })
    send.mutate({ commandId, record: record as CloseOutInput })
  }
  const put = (part: Partial<Draft>) => change({ ...part, commandId: null })
  const left = draft.outcome === 'made-safe' || draft.outcome === 'condemned'
  const told = left || draft.outcome === 'bed-not-at-fault'
  const tick = (id: VisitAskId, label: string) => (
    <Checkbox
      label={label}
      checked={draft.answers[id]?.text === 'yes'}
      onChange={(event) =>
        put({
          answers: {
            ...draft.answers,
            [id]: { text: event.target.checked ? 'yes' : '', unit: null, value: null, at: new Date().toISOString() },
          },
        })
      }
    />
  )
  return (
    <>
      <PageHead
        title={words('title')}
        actions={<Button onClick={() => change({ step: procedure.steps.length - 1 })}>{words('backToSteps')}</Button>}
      />
      <div className="flex flex-col gap-6">
        <ChoiceGroup
          label={words('outcome')}
          name="outcome"
          choices={visitOutcomes.map((value) => ({ value, label: outcomes(value), hint: meanings(value) }))}
          value={draft.outcome}
          onChange={(outcome) => put({ outcome })}
        />
        <DayInput
          label={words('workDay')}
          hint={dayHint(draft, me.company, now, words)}
          required
          max={today}
          value={draft.workDay}
          onChange={(event) => put({ workDay: entered(event.target.value) })}
        />
        {left ? tick('left-in-bypass', words('leftInBypass')) : null}
        {told ? tick('customer-told', words('customerTold')) : null}
        {draft.outcome === 'bed-not-at-fault' ? tick('in-service', words('backInService')) : null}
        {draft.outcome && outcomeFacts[draft.outcome as keyof typeof outcomeFacts].needsReason ? (
          <TextArea label={words('found')} value={draft.reason} onChange={(event) => put({ reason: event.target.value })} required />
        ) : null}
        {draft.outcome && draft.outcome !== 'no-access' && draft.outcome !== 'bed-not-at-fault' && (changesBed(visit.kind) || visit.bed) ? (
          <OldBedFields visit={visit} form={{ shown: draft, change: put }} />
        ) : null}
        {draft.outcome === 'done' && changesBed(visit.kind) ? (
          <>
            <NewBedFields form={{ shown: draft, change: put }} by={by} tried={tried} />
            <TextInput
              label={words('outletWhy', { limit: formatHardnessGpg(figures.outletLimitGpg, me.company) })}
              value={draft.hardnessReason}
              onChange={(event) => put({ hardnessReason: event.target.value })}
            />
          </>
        ) : null}
        {draft.outcome && draft.outcome !== 'no-access' ? (
          <PartsUsed stock={visit.stock} parts={parts} tried={tried} onChange={(next) => put({ parts: next })} />
        ) : null}
        <TextArea label={words('notes')} value={draft.notes} onChange={(event) => put({ notes: event.target.value })} />
      </div>
      {tried && missing.length > 0 ? (
        <div role="alert" className="mt-6 border-l-4 border-bead bg-wash px-4 py-3">
          <p className="font-semibold">{words('missing')}</p>
          <ul className="list-disc pl-6">
            {missing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      ) : null}
      {failure ? (
        <Problem happened={failure.message} kept={words('kept')} reference={failure.requestId} onRetry={finish} retrying={send.isPending} />
      ) : null}
      <div className="sticky bottom-0 mt-6 border-t border-line bg-paper py-4">
        <Button kind="ink" wide busy={send.isPending} busyLabel={words('sending')} onClick={finish}>
          {words('finish')}
        </Button>
      </div>
    </>
  )
}
