'use client'
import type { CloseOutInput, VisitPage } from '@almanac/contract/visits'
import { oneOf } from '@almanac/records/choices'
import { outletReasons } from '@almanac/records/hard-outlet'
import type { VisitAskId } from '@almanac/records/procedure-ask'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import { requiredChecks } from '@almanac/service-rules/close-out/check-steps'
import { missingForCloseOut, testsOutlet } from '@almanac/service-rules/close-out/completeness'
import { outcomesOfKind } from '@almanac/service-rules/close-out/safe-ending'
import { outcomeFacts } from '@almanac/service-rules/jobs/visit-outcomes'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DayInput } from '@almanac/ui/day-input'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
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
import { outcomesOfVisit, textsOf } from './standing-stop.ts'
import { suggestedParts } from './suggested-parts.ts'
import type { DraftHandle } from './use-draft.ts'
import { firstOpenStep, tankOfVisit, type VisitReading } from './visit-amounts.ts'

/** What to look at where work, or its closing, ran over midnight. */
function dayHint({ startedAt, finishedAt }: ShownDraft, display: ClockDisplay, now: string, words: Words<'closeOut'>): string | undefined {
  const [begun, ended, sent] = [startedAt, finishedAt, now].map((at) => (at === null ? null : dayIn(display.timeZone, at)))
  if (begun && ended && begun !== ended)
    return words('begunAndFinished', { begun: formatNearDay(begun, display), finished: formatNearDay(ended, display) })
  return begun && sent && begun !== sent ? words('begunOn', { begun: formatNearDay(begun, display) }) : undefined
}

/** Outcomes at which the bed that was found may have come out. */
const ENDS_BED: readonly VisitOutcome[] = ['done', 'made-safe', 'condemned']

type Props = { visit: VisitPage; procedure: Procedure; handle: DraftHandle }

/** The end of a visit: its outcome and what that outcome demands; what is missing is listed in plain sentences before anything is sent. */
export function CloseOutForm({ visit, procedure, handle }: Props) {
  const { api, me, figures } = useSession()
  const words = useWords('closeOut')
  const outcomes = useWords('outcome')
  const stops = useWords('stop')
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
    stops,
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
  // What the outcome demands is asked here where no step of this visit asks it, so that nothing is demanded in vain.
  const needed = record.outcome
    ? requiredChecks(record.outcome, visit.kind, record.oldBed?.takenOut === true || record.newBed !== null)
    : []
  const asked = new Set<VisitAskId>(procedure.steps.flatMap((step) => step.asks.map((ask) => ask.id)))
  const lacks = (id: VisitAskId) => record.outcome !== 'done' || !asked.has(id)
  const tick = (id: VisitAskId, label: string, [text, ...alike]: readonly [string, ...string[]] = ['yes']) => (
    <Checkbox
      label={label}
      checked={[text, ...alike].includes(draft.answers[id]?.text ?? '')}
      onChange={(event) =>
        put({
          answers: {
            ...draft.answers,
            [id]: { text: event.target.checked ? text : '', unit: null, value: null, at: new Date().toISOString() },
          },
        })
      }
    />
  )
  return (
    <>
      <PageHead
        title={words('title')}
        actions={<Button onClick={() => change({ step: firstOpenStep(procedure, draft.answers, by) })}>{words('backToSteps')}</Button>}
      />
      <div className="flex flex-col gap-6">
        <ChoiceGroup
          label={words('outcome')}
          name="outcome"
          choices={outcomesOfVisit(visit, textsOf(draft.answers)).map((value) => ({
            value,
            label: outcomes(value),
            hint: meanings(value),
          }))}
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
        {needed.includes('bypass-proven') && lacks('bypass-holds') ? tick('bypass-holds', words('bypassProven'), ['holds', 'leaks']) : null}
        {needed.includes('pressure-zero') && lacks('pressure-zero') ? tick('pressure-zero', words('pressureZero')) : null}
        {needed.includes('left-in-bypass') ? tick('left-in-bypass', stops('do/left-in-bypass')) : null}
        {needed.includes('customer-told') ? tick('customer-told', stops('do/customer-told')) : null}
        {draft.outcome === 'bed-not-at-fault' ? tick('in-service', words('backInService')) : null}
        {draft.outcome && outcomeFacts[draft.outcome as keyof typeof outcomeFacts].needsReason ? (
          <TextArea label={words('found')} value={draft.reason} onChange={(event) => put({ reason: event.target.value })} required />
        ) : null}
        {record.outcome && ENDS_BED.includes(record.outcome) && outcomesOfKind[visit.kind].includes('condemned') ? (
          <OldBedFields visit={visit} form={{ shown: draft, change: put }} />
        ) : null}
        {draft.outcome === 'done' && changesBed(visit.kind) ? (
          <NewBedFields form={{ shown: draft, change: put }} by={by} tried={tried} />
        ) : null}
        {draft.outcome === 'done' && testsOutlet(visit.kind) ? (
          <Select
            label={words('outletWhy', { limit: formatHardnessGpg(figures.outletLimitGpg, me.company) })}
            value={oneOf(outletReasons, draft.hardnessReason) ?? ''}
            none={words('outletFine')}
            onChange={(event) => put({ hardnessReason: event.target.value })}
            choices={outletReasons.map((value) => ({ value, label: words(`outlet/${value}`) }))}
          />
        ) : null}
        {record.outcome && record.outcome !== 'no-access' && record.outcome !== 'left-as-found' ? (
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
