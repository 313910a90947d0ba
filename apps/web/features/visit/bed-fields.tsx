'use client'
import type { VisitPage } from '@almanac/contract/visits'
import { choicesOf } from '@almanac/records/choices'
import { endCauses, endCauseWords } from '@almanac/records/end-cause'
import { resinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { Checkbox } from '@almanac/ui/checkbox'
import { NumberInput } from '@almanac/ui/number-input'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { TextInput } from '@almanac/ui/text-input'
import { useSession } from '@/client/providers'
import { firstUnit, readTyped, unitsFor } from '@/client/typed-quantity'
import { type Draft, entered, type ShownDraft } from './draft.ts'
import { changesBed } from './procedure-of.ts'

const CAUSES = choicesOf(endCauses, endCauseWords)
const RESINS = choicesOf(resinKinds, resinKindWords)

type Amount = 'volume' | 'gravel' | 'tube'
/** The closing form and what changes it. */
export type ClosingForm = { shown: ShownDraft; change: (part: Partial<Draft>) => void }

const STORED: Record<Amount, string> = { volume: 'ft3', gravel: 'lb', tube: 'in' }

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

/** The bed that went in: resin, volume, gravel, tube. Text stays as typed. */
export function NewBedFields({ form }: { form: ClosingForm }) {
  const { shown, change } = form
  const { me } = useSession()
  const amount = (key: Amount, label: string, hint?: string) => {
    const unitKey = `${key}Unit` as `${Amount}Unit`
    const stored = STORED[key]
    const unit = shown[unitKey] || firstUnit(stored, me.company.unitSystem)
    // The unit belongs to the text beside it: whoever changes one has set both.
    const put = (text: string, inUnit: string) => change({ [key]: entered(text), [unitKey]: entered(inUnit) } as Partial<Draft>)
    return (
      <NumberInput
        label={label}
        hint={hint}
        unit={unitsFor(stored)}
        chosenUnit={unit}
        onUnit={(other) => put(shown[key], other)}
        value={shown[key]}
        error={readTyped(shown[key], unit, stored).error}
        onChange={(event) => put(event.target.value, unit)}
      />
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
