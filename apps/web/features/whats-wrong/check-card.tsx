import type { Check, CheckId } from '@almanac/softener/diagnosis/check-types'
import { answerWords } from '@almanac/softener/diagnosis/diagnosis-words'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { AMOUNT_KINDS } from '@almanac/units/amount-kinds'
import { firstUnit } from '@almanac/units/dimensions'
import type { AmountDisplay } from '@almanac/units/display'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { type DiagnosisAnswers, NUMBER_FIELDS } from './answers.ts'
import { CheckCautions } from './check-cautions.tsx'

type Props = {
  check: Check
  told: DiagnosisAnswers
  display: AmountDisplay
  onTold: (told: DiagnosisAnswers) => void
}

/** One check: its cautions first, then how it is made, then its answers as large targets, and numbers where something is measured. */
export function CheckCard({ check, told, display, onTold }: Props) {
  const words = useWords('whatsWrong')
  const said = useWords('diagnosis')
  const fields = NUMBER_FIELDS.filter((one) => one.check === check.id)
  const measured = fields.some((one) => told.numbers[one.field])
  // Once open it stays open: emptying the field must not take it away from whoever types in it.
  const [open, setOpen] = useState(false)
  return (
    <div id={`check-${check.id}`} className="scroll-mt-24">
      <CheckCautions cautions={check.cautions} />
      <ChoiceGroup
        label={said(`check/${check.id}`)}
        hint={said(`check/${check.id}/how`)}
        inline
        value={told.answers[check.id] ?? ''}
        choices={[...check.answers.map(({ value }) => value), ''].map((value) => ({
          value,
          label: value === '' ? words('notKnown') : answerWords(check.id, value, said),
          disabled: measured,
        }))}
        onChange={(value) => onTold(withAnswer(told, check.id, value))}
      />
      {fields.length > 0 ? (
        <details className="mt-2" open={open || measured} onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary className="w-fit cursor-pointer py-3">{words('orMeasured')}</summary>
          <div className="mt-2 flex flex-wrap gap-x-6 gap-y-4">
            {fields.map(({ field, kind }) => (
              <AmountField
                key={field}
                label={words(field)}
                kind={kind}
                unitWords={kind === 'hardness' ? firstUnit(AMOUNT_KINDS.hardness.dimension, display.unitSystem) : undefined}
                askOdd={false}
                tried
                value={{ text: told.numbers[field] ?? '', unit: firstUnit(AMOUNT_KINDS[kind].dimension, display.unitSystem), why: '' }}
                onChange={({ text }) => onTold({ ...told, numbers: { ...told.numbers, [field]: text } })}
              />
            ))}
          </div>
          {measured ? <p className="mt-2 text-small text-soft">{words('measuredFirst')}</p> : null}
        </details>
      ) : null}
    </div>
  )
}

function withAnswer(told: DiagnosisAnswers, id: CheckId, value: string): DiagnosisAnswers {
  return { ...told, answers: { ...told.answers, [id]: value || undefined } }
}
