'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { choicesOf } from '@almanac/records/choices'
import { endCauses, endCauseWords } from '@almanac/records/end-cause'
import { resinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { Checkbox } from '@almanac/ui/checkbox'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import type { AmountKind } from '@almanac/units/amount-kinds'
import { AmountField } from '@/client/amount-field'
import type { AmountText } from '@/client/amounts'
import { type Draft, entered, type ShownDraft } from './draft.ts'
import { changesBed } from './procedure-of.ts'
import { judgeOnSite, unitOrFirst, type VisitReading } from './visit-amounts.ts'

const CAUSES = choicesOf(endCauses, endCauseWords)
const RESINS = choicesOf(resinKinds, resinKindWords)

type Amount = 'volume' | 'gravel' | 'tube'
/** The closing form and what changes it. */
export type ClosingForm = { shown: ShownDraft; change: (part: Partial<Draft>) => void }

/** The bed that came out: whether it did, why it ended, and what shows it. */
export function OldBedFields({ visit, form }: { visit: VisitPage; form: ClosingForm }) {
  const { shown, change } = form
  const asks = shown.takenOut || shown.outcome === 'condemned' || (shown.outcome === 'done' && changesBed(visit.kind))
  return (
    <Section title="The old bed">
      <div className="flex flex-col gap-5">
        <Checkbox
          label="The old bed was taken out"
          checked={shown.takenOut}
          onChange={(event) => change({ takenOut: entered(event.target.checked) })}
        />
        {asks ? (
          <>
            <Select
              label="Why it ended"
              value={shown.endCause}
              none="Choose; “not known” is an answer too"
              onChange={(event) => change({ endCause: entered(event.target.value) })}
              choices={CAUSES}
            />
            <TextInput
              label="What shows it"
              hint="soft beads, orange rinse, broken basket"
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
    <Section title="The new bed">
      <div className="flex flex-col gap-5">
        <Select
          label="Resin"
          value={shown.resinKind}
          none="Choose"
          onChange={(event) => change({ resinKind: event.target.value })}
          choices={RESINS}
        />
        {amount('volume', 'Volume of resin')}
        {amount('gravel', 'Gravel', 'Empty where there is none')}
        {amount('tube', 'Distributor tube, cut to')}
      </div>
    </Section>
  )
}
