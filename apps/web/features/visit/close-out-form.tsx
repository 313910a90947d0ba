'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { oneOf } from '@almanac/records/choices'
import { outletReasons } from '@almanac/records/hard-outlet'
import { photographKinds } from '@almanac/records/picture-kind'
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
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatHardnessGpg } from '@almanac/units/format'
import type { ClockDisplay } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import { useMemo, useState } from 'react'
import { useField } from '@/client/field/field-home'
import { PhotographPart } from '@/client/photographs/photograph-part'
import { SignaturePart } from '@/client/photographs/signature-part'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { useToday } from '@/client/use-today'
import { NewBedFields, OldBedFields } from './bed-fields.tsx'
import { BesideFields } from './beside-fields.tsx'
import { entered, type ShownDraft } from './draft.ts'
import { PartsUsed } from './parts-used.tsx'
import { shownDraft } from './prefilled.ts'
import { isEmptied } from './procedure-of.ts'
import { fillsBed, recordOf } from './record-of-draft.ts'
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
  const { me, figures } = useSession()
  const { write } = useField()
  const words = useWords('closeOut')
  const saving = useWords('sending')
  const outcomes = useWords('outcome')
  const stops = useWords('stop')
  const meanings = useWords('outcomeMeaning')
  const beadWords = useWords('beadCondition')
  const lacking = useWords('lacking')
  const { change, clear, written } = handle
  const units = me.company.unitSystem
  const today = useToday()
  const now = new Date().toISOString()
  const draft = shownDraft(handle.draft, { timeZone: me.company.timeZone, now, beadWords })
  const firm = useRebedFirm()
  const [amounts, amountNames] = [useWords('amount'), useWords('amountName')]
  const guessed = useMemo(() => suggestedParts(visit, firm), [visit, firm])
  const fills = fillsBed(visit.kind, draft)
  const parts = draft.parts ?? (draft.outcome === 'done' || fills ? guessed : [])
  const [tried, setTried] = useState(false)
  const [finishing, setFinishing] = useState(false)
  const [nowhere, setNowhere] = useState(false)
  const by: VisitReading = { locale: me.company.locale, units, tank: tankOfVisit(visit, me.company) }
  const record = recordOf(visit, draft, parts, by)
  const missing = missingForCloseOut(record, {
    outletLimitGpg: figures.outletLimitGpg,
    display: me.company,
    today,
    tank: by.tank,
    emptied: isEmptied(visit),
    filled: fills && draft.volume.trim() !== '',
    words: lacking,
    outcomes,
    stops,
    amounts,
    amountNames,
  })
  const finish = async () => {
    setTried(true)
    if (missing.length > 0) return
    setFinishing(true)
    // Written down here, sent when it can be: from now on it is a command, and the draft is gone with the same stroke.
    await written()
    const safe = await write({ kind: 'close-out', body: { record }, visitId: visit.visitId, siteLabel: visit.siteLabel }, visit.jobId)
    setFinishing(false)
    setNowhere(!safe)
    if (safe) clear()
  }
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
        change({
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
          onChange={(outcome) => change({ outcome })}
        />
        <DayInput
          label={words('workDay')}
          hint={dayHint(draft, me.company, now, words)}
          required
          max={today}
          value={draft.workDay}
          onChange={(event) => change({ workDay: entered(event.target.value) })}
        />
        {needed.includes('bypass-proven') && lacks('bypass-holds') ? tick('bypass-holds', words('bypassProven'), ['holds', 'leaks']) : null}
        {needed.includes('pressure-zero') && lacks('pressure-zero') ? tick('pressure-zero', words('pressureZero')) : null}
        {needed.includes('left-in-bypass') ? tick('left-in-bypass', stops('do/left-in-bypass')) : null}
        {needed.includes('customer-told') ? tick('customer-told', stops('do/customer-told')) : null}
        {draft.outcome === 'bed-not-at-fault' ? tick('in-service', words('backInService')) : null}
        {draft.outcome && outcomeFacts[draft.outcome as keyof typeof outcomeFacts].needsReason ? (
          <TextArea label={words('found')} value={draft.reason} onChange={(event) => change({ reason: event.target.value })} required />
        ) : null}
        {record.outcome && !isEmptied(visit) && ENDS_BED.includes(record.outcome) && outcomesOfKind[visit.kind].includes('condemned') ? (
          <OldBedFields visit={visit} form={{ shown: draft, change }} />
        ) : null}
        {fills ? <NewBedFields form={{ shown: draft, change }} by={by} tried={tried} /> : null}
        {draft.outcome === 'done' && testsOutlet(visit.kind) ? (
          <Select
            label={words('outletWhy', { limit: formatHardnessGpg(figures.outletLimitGpg, me.company) })}
            value={oneOf(outletReasons, draft.hardnessReason) ?? ''}
            none={words('outletFine')}
            onChange={(event) => change({ hardnessReason: event.target.value })}
            choices={outletReasons.map((value) => ({ value, label: words(`outlet/${value}`) }))}
          />
        ) : null}
        {record.outcome && record.outcome !== 'no-access' && record.outcome !== 'left-as-found' ? (
          <PartsUsed stock={visit.stock} parts={parts} tried={tried} onChange={(next) => change({ parts: next })} />
        ) : null}
        <BesideFields visit={visit} shown={draft} change={change} />
        <TextArea label={words('notes')} value={draft.notes} onChange={(event) => change({ notes: event.target.value })} />
        <PhotographPart visitId={visit.visitId} kinds={photographKinds} />
        <SignaturePart visitId={visit.visitId} />
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
      {nowhere ? <Notice kind="mind">{saving('notSent')}</Notice> : null}
      <div className="sticky bottom-14 mt-6 border-t border-line bg-paper py-4">
        <Button kind="ink" wide busy={finishing} busyLabel={saving('sendingNow', { count: 1 })} onClick={() => void finish()}>
          {words('finish')}
        </Button>
      </div>
    </>
  )
}
