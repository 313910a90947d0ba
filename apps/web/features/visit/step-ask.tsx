'use client'
import type { Answer } from '@almanac/service-rules/close-out/record-from-answers'
import type { Ask } from '@almanac/softener/procedure/procedure-types'
import { Checkbox } from '@almanac/ui/checkbox'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { useWords } from '@almanac/words/use-words'
import { AmountField } from '@/client/amount-field'
import type { AmountText } from '@/client/amounts'
import type { DraftHandle } from './use-draft.ts'
import { judgeOnSite, readOnSite, unitOrFirst, type VisitReading } from './visit-amounts.ts'

type Props = { ask: Ask; handle: DraftHandle; missing: boolean; by: VisitReading }

/** One thing the technician confirms, chooses or measures. A number may be typed in any unit of its kind; what was typed is kept. */
export function StepAsk({ ask, handle, missing, by }: Props) {
  const words = useWords('visit')
  const { draft, change } = handle
  const answer = draft.answers[ask.id]
  const put = (typed: Omit<Answer, 'at'>) => change({ answers: { ...draft.answers, [ask.id]: { ...typed, at: new Date().toISOString() } } })
  const choose = (text: string) => put({ text, unit: null, value: null })
  if (ask.kind === 'confirm')
    return (
      <Checkbox
        label={ask.label}
        checked={answer?.text === 'yes'}
        error={missing ? words('confirmFirst') : undefined}
        onChange={(event) => choose(event.target.checked ? 'yes' : '')}
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
        error={missing ? words('chooseFirst') : undefined}
        onChange={(value) => choose(value)}
      />
    )
  if (ask.amount === null) return null
  const kind = ask.amount
  const value = { text: answer?.text ?? '', unit: unitOrFirst(kind, answer?.unit, by.units), why: answer?.why ?? '' }
  const type = ({ text, unit, why }: AmountText) => {
    const reading = readOnSite(kind, text, unit, by)
    const read = reading.state === 'read' ? { value: reading.value, entered: reading.entered.value } : { value: null, entered: null }
    put({ text, unit: reading.state === 'read' ? reading.entered.unit : unit, ...read, ...(why === '' ? {} : { why }) })
  }
  return (
    <AmountField
      label={ask.label}
      hint={ask.required ? undefined : words('ifMeasured')}
      required={ask.required}
      kind={kind}
      value={value}
      onChange={type}
      tried={missing}
      lacking={words('measureFirst')}
      judge={judgeOnSite(kind, by.tank)}
    />
  )
}
