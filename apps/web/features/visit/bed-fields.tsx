'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { endCauses } from '@almanac/records/end-cause'
import { resinKinds } from '@almanac/records/resin-kind'
import { beginsNewBed } from '@almanac/service-rules/jobs/visit-outcomes'
import { Checkbox } from '@almanac/ui/checkbox'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import type { AmountKind } from '@almanac/units/amount-kinds'
import { useWords } from '@almanac/words/use-words'
import { AmountField } from '@/client/amount-field'
import type { AmountText } from '@/client/amounts'
import { type Draft, entered, type ShownDraft } from './draft.ts'
import { judgeOnSite, unitOrFirst, type VisitReading } from './visit-amounts.ts'

type Amount = 'volume' | 'gravel' | 'tube'
/** The closing form and what changes it. */
export type ClosingForm = { shown: ShownDraft; change: (part: Partial<Draft>) => void }

/** The bed that came out: whether it did, why it ended, and what shows it. */
export function OldBedFields({ visit, form }: { visit: VisitPage; form: ClosingForm }) {
  const words = useWords('closeOut')
  const causes = useWords('endCause')
  const { shown, change } = form
  const asks = shown.takenOut || shown.outcome === 'condemned' || (shown.outcome === 'done' && beginsNewBed(visit.kind))
  return (
    <Section title={words('oldBed')}>
      <div className="flex flex-col gap-5">
        <Checkbox
          label={words('takenOut')}
          checked={shown.takenOut}
          onChange={(event) => change({ takenOut: entered(event.target.checked) })}
        />
        {asks ? (
          <>
            <Select
              label={words('whyEnded')}
              value={shown.endCause}
              none={words('chooseCause')}
              onChange={(event) => change({ endCause: entered(event.target.value) })}
              choices={endCauses.map((value) => ({ value, label: causes(value) }))}
            />
            <TextInput
              label={words('evidence')}
              hint={words('evidenceHint')}
              value={shown.evidence}
              onChange={(event) => change({ evidence: entered(event.target.value) })}
            />
          </>
        ) : null}
      </div>
    </Section>
  )
}

const KINDS = { volume: 'resin', gravel: 'gravel', tube: 'tube' } as const satisfies Record<Amount, AmountKind>

type NewBedProps = { form: ClosingForm; by: VisitReading; tried: boolean }

/** The bed that went in: resin, volume, gravel, tube. Text stays as typed. */
export function NewBedFields({ form, by, tried }: NewBedProps) {
  const words = useWords('closeOut')
  const resins = useWords('resinKind')
  const { shown, change } = form
  const amount = (key: Amount, label: string, hint?: string) => {
    const kind = KINDS[key]
    const value = { text: shown[key], unit: unitOrFirst(kind, shown[`${key}Unit`], by.units), why: shown[`${key}Why`] }
    // The unit and the reason belong to the text beside them: whoever changes one has set all.
    const put = (typed: AmountText) =>
      change({ [key]: entered(typed.text), [`${key}Unit`]: entered(typed.unit), [`${key}Why`]: entered(typed.why) } as Partial<Draft>)
    return (
      <AmountField label={label} hint={hint} kind={kind} value={value} onChange={put} tried={tried} judge={judgeOnSite(kind, by.tank)} />
    )
  }
  return (
    <Section title={words('newBed')}>
      <div className="flex flex-col gap-5">
        <Select
          label={words('resin')}
          value={shown.resinKind}
          none={words('choose')}
          onChange={(event) => change({ resinKind: event.target.value })}
          choices={resinKinds.map((value) => ({ value, label: resins(value) }))}
        />
        {amount('volume', words('volume'))}
        {amount('gravel', words('gravel'), words('gravelHint'))}
        {amount('tube', words('tube'))}
      </div>
    </Section>
  )
}
