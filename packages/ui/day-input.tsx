import type { InputHTMLAttributes } from 'react'
import { controlClass } from './control-class.ts'
import { Field, type FieldWords } from './field.tsx'

export type DayInputProps = FieldWords &
  Omit<InputHTMLAttributes<HTMLInputElement>, 'className' | 'required' | 'type'> & {
    hideLabel?: boolean
    /** A day as 'YYYY-MM-DD', in the company's zone; so are `min` and `max`. */
    value?: string
  }

/** A calendar day, by the browser's own date control (typed or picked). */
export function DayInput({ label, hint, error, required, hideLabel, id, ...rest }: DayInputProps) {
  return (
    <Field {...{ label, hint, error, required, hideLabel, id }}>
      {(wired) => <input {...rest} {...wired} type="date" className={`${controlClass} max-w-52`} />}
    </Field>
  )
}
