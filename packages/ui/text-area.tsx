import type { TextareaHTMLAttributes } from 'react'
import { controlClass } from './control-class.ts'
import { Field, type FieldWords } from './field.tsx'

export type TextAreaProps = FieldWords &
  Omit<TextareaHTMLAttributes<HTMLTextAreaElement>, 'className' | 'required'> & { hideLabel?: boolean }

/** Several lines of text; grows with what is written where the browser can. */
export function TextArea({ label, hint, error, required, hideLabel, id, rows = 3, ...rest }: TextAreaProps) {
  return (
    <Field {...{ label, hint, error, required, hideLabel, id }}>
      {(wired) => (
        <textarea
          {...rest}
          {...wired}
          rows={rows}
          className={`${controlClass} field-sizing-content`}
          style={{ minHeight: `calc(${rows}lh + 1.25rem)` }}
        />
      )}
    </Field>
  )
}
