'use client'
import type { Ask } from '@almanac/softener/procedure/procedure-types'
import { Checkbox } from '@almanac/ui/checkbox'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { NumberInput } from '@almanac/ui/number-input'
import { useSession } from '@/client/providers'
import { firstUnit, readTyped, unitsFor } from '@/client/typed-quantity'
import type { DraftHandle } from './use-draft.ts'

/** One thing the technician confirms, chooses or measures. A number may be typed in any unit of its kind; what was typed is kept. */
export function StepAsk({ ask, handle, missing }: { ask: Ask; handle: DraftHandle; missing: boolean }) {
  const { me } = useSession()
  const { draft, change } = handle
  const answer = draft.answers[ask.id]
  const put = (text: string, unit: string | null, value: number | null) =>
    change({ answers: { ...draft.answers, [ask.id]: { text, unit, value, at: new Date().toISOString() } } })
  if (ask.kind === 'confirm')
    return (
      <Checkbox
        label={ask.label}
        checked={answer?.text === 'yes'}
        error={missing ? 'Confirm this before the next step, or stop here and close the visit.' : undefined}
        onChange={(event) => put(event.target.checked ? 'yes' : '', null, null)}
      />
    )
  if (ask.kind === 'choice')
    return (
      <ChoiceGroup
        label={ask.label}
        name={ask.id}
        choices={ask.choices}
        value={answer?.text ?? ''}
        required={ask.required}
        error={missing ? 'Choose one before the next step.' : undefined}
        onChange={(value) => put(value, null, null)}
      />
    )
  const stored = ask.unit ?? ''
  const unit = answer?.unit ?? firstUnit(stored, me.company.unitSystem)
  const units = unitsFor(stored)
  const read = readTyped(answer?.text ?? '', unit, stored)
  const type = (text: string, inUnit: string) => put(text, inUnit, readTyped(text, inUnit, stored).value)
  return (
    <NumberInput
      label={ask.label}
      hint={ask.required ? undefined : 'if measured'}
      required={ask.required}
      unit={units.length > 1 ? units : stored}
      chosenUnit={unit}
      onUnit={(other) => type(answer?.text ?? '', other)}
      value={answer?.text ?? ''}
      error={read.error ?? (missing ? 'Measure and type it before the next step.' : undefined)}
      onChange={(event) => type(event.target.value, unit)}
    />
  )
}
