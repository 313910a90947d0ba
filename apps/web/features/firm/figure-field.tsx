import { NumberInput } from '@almanac/ui/number-input'
import { Select } from '@almanac/ui/select'
import { TextArea } from '@almanac/ui/text-area'
import { TextInput } from '@almanac/ui/text-input'
import { AmountField } from '@/client/amount-field'
import type { FormField } from './figure-forms.ts'

type Props = { field: FormField; text: string; error: string | undefined; onText: (text: string) => void }

/** The control for one thing to type or choose. */
export function FigureField({ field, text, error, onText }: Props) {
  const { label, hint, unit, rule, choices, lines, required } = field
  const common = { label, hint, error, value: text, onChange: (event: { target: { value: string } }) => onText(event.target.value) }
  if (choices) return <Select {...common} choices={choices} />
  if (rule)
    return (
      <AmountField
        {...{ label, hint, error, required, kind: rule }}
        askOdd={false} // by the form, whose reason counts for all of it
        unitWords={unit}
        value={{ text, unit: rule.dimension.units[0] ?? '', why: '' }}
        onChange={(next) => onText(next.text)}
      />
    )
  if (lines) return <TextArea {...common} rows={lines} required={required} />
  return unit ? <NumberInput {...common} unit={unit} required={required} /> : <TextInput {...common} required={required} maxLength={200} />
}
