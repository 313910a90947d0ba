import { type SelectHTMLAttributes, useId } from 'react'
import type { Choice } from './select.tsx'

export type FilterSelectProps = Omit<SelectHTMLAttributes<HTMLSelectElement>, 'className' | 'multiple'> & {
  label: string
  choices: readonly Choice[]
}

/** A filter that reads like a sentence: "Supply **all**". Only the chosen word is wide, not the longest. */
export function FilterSelect({ label, choices, ...rest }: FilterSelectProps) {
  const id = useId()
  return (
    <span className="inline-flex items-baseline gap-1.5">
      <label htmlFor={id} className="text-small text-soft">
        {label}
      </label>
      <select
        {...rest}
        id={id}
        className="field-sizing-content min-h-8 max-w-[60vw] rounded-none border-b border-edge bg-transparent font-semibold text-ink hover:border-ink in-[.field]:min-h-control print:appearance-none print:border-0"
      >
        {choices.map((c) => (
          <option key={c.value} value={c.value} disabled={c.disabled}>
            {c.label}
          </option>
        ))}
      </select>
    </span>
  )
}
