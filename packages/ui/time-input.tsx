import type { InputHTMLAttributes } from 'react'
import { controlClass } from './control-class.ts'
import { Field, type FieldWords } from './field.tsx'

export type TimeInputProps = FieldWords &
  Omit<InputHTMLAttributes<HTMLInputElement>, 'className' | 'required' | 'type'> & {
    hideLabel?: boolean
    /** A time of day as 'HH:MM', in the company's zone. */
    value?: string
  }

/** A time of day, by the browser's own control (typed or picked), in steps of five minutes unless told otherwise. */
export function TimeInput({ label, hint, error, required, hideLabel, id, step = 300, ...rest }: TimeInputProps) {
  return (
    <Field {...{ label, hint, error, required, hideLabel, id }}>
      {(wired) => <input {...rest} {...wired} type="time" step={step} className={`${controlClass} max-w-40`} />}
    </Field>
  )
}
