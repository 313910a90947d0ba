import type { SelectHTMLAttributes } from 'react'
import { controlClass } from './control-class.ts'
import { Field, type FieldWords } from './field.tsx'

/** One choice: what is kept, and what is read. */
export type Choice = { value: string; label: string; disabled?: boolean }

export type SelectProps = FieldWords &
  Omit<SelectHTMLAttributes<HTMLSelectElement>, 'className' | 'required' | 'multiple'> & {
    hideLabel?: boolean
    choices: readonly Choice[]
    /** Shown first, with an empty value, when nothing is chosen yet. */
    none?: string
  }

/** A native select with its label, hint and error. */
export function Select({ label, hint, error, required, hideLabel, id, choices, none, ...rest }: SelectProps) {
  return (
    <Field {...{ label, hint, error, required, hideLabel, id }}>
      {(wired) => (
        <select {...rest} {...wired} className={controlClass}>
          {none === undefined ? null : <option value="">{none}</option>}
          {choices.map((c) => (
            <option key={c.value} value={c.value} disabled={c.disabled}>
              {c.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}
