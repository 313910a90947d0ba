import type { InputHTMLAttributes } from 'react'
import { controlClass } from './control-class.ts'
import { Field, type FieldWords } from './field.tsx'

export type TextInputProps = FieldWords &
  Omit<InputHTMLAttributes<HTMLInputElement>, 'className' | 'required'> & {
    hideLabel?: boolean
    type?: 'text' | 'email' | 'tel' | 'password' | 'url'
  }

/** One line of text with its label, hint and error. Takes the native input's props; controlled or not. */
export function TextInput({ label, hint, error, required, hideLabel, id, type = 'text', ...rest }: TextInputProps) {
  return (
    <Field {...{ label, hint, error, required, hideLabel, id }}>
      {(wired) => <input {...rest} {...wired} type={type} className={controlClass} />}
    </Field>
  )
}
