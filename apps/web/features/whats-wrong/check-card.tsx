import type { Check, CheckId } from '@almanac/softener/diagnosis/check-types'
import { Caution } from '@almanac/ui/caution'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { NumberInput } from '@almanac/ui/number-input'
import type { UnitSystem } from '@almanac/units/unit-system'
import { NUMBER_FIELDS, type ReadTold, type Told } from './answers.ts'

type Props = {
  check: Check
  told: Told
  errors: ReadTold['errors']
  units: UnitSystem
  onTold: (told: Told) => void
}

/** One check: its cautions first, then how it is made, then its answers as large targets, and numbers where something is measured. */
export function CheckCard({ check, told, errors, units, onTold }: Props) {
  const fields = NUMBER_FIELDS.filter((one) => one.check === check.id)
  const measured = fields.some((one) => told.numbers[one.field])
  return (
    <div id={`check-${check.id}`} className="scroll-mt-24">
      {check.cautions.map((caution) => (
        <Caution key={caution.text} kind={caution.kind}>
          {caution.text}
        </Caution>
      ))}
      <ChoiceGroup
        label={check.title}
        hint={check.how}
        inline
        value={told.answers[check.id] ?? ''}
        choices={[...check.answers, { value: '', label: 'not known' }].map(({ value, label }) => ({ value, label, disabled: measured }))}
        onChange={(value) => onTold(withAnswer(told, check.id, value))}
      />
      {fields.length > 0 ? (
        <details className="mt-2" open={measured}>
          <summary className="w-fit cursor-pointer py-3">Or as measured</summary>
          <div className="mt-2 flex flex-wrap gap-x-6 gap-y-4">
            {fields.map(({ field, label, kind }) => (
              <NumberInput
                key={field}
                label={label}
                unit={kind === 'percent' ? '%' : units === 'us' ? 'gpg' : 'mg/L'}
                value={told.numbers[field] ?? ''}
                error={errors[field]}
                onChange={(event) => onTold({ ...told, numbers: { ...told.numbers, [field]: event.target.value } })}
              />
            ))}
          </div>
          {measured ? (
            <p className="mt-2 text-small text-soft">What is measured goes before the answer above. Empty the field to answer instead.</p>
          ) : null}
        </details>
      ) : null}
    </div>
  )
}

function withAnswer(told: Told, id: CheckId, value: string): Told {
  return { ...told, answers: { ...told.answers, [id]: value || undefined } }
}
