import { type ReactNode, useId } from 'react'

/** What a control must carry so that label, hint and error belong to it. */
export type Wired = { id: string; 'aria-describedby'?: string; 'aria-invalid'?: true; required?: true }

/** The words around one control. */
export type FieldWords = {
  label: ReactNode
  /** What to write, or where to find it. */
  hint?: ReactNode
  /** What is wrong and what to do; empty when all is well. */
  error?: ReactNode
  required?: boolean
}

export type FieldProps = FieldWords & {
  /** Keep the label for screen readers only. */
  hideLabel?: boolean
  /** An id of one's own, to link an error summary to the control. */
  id?: string
  children: (wired: Wired) => ReactNode
}

/** Label, hint and error around one control, wired by ids. */
export function Field({ label, hint, error, required, hideLabel, id, children }: FieldProps) {
  const made = useId()
  const own = id ?? made
  const described = [hint ? `${own}-hint` : '', error ? `${own}-error` : ''].filter(Boolean).join(' ')
  return (
    <div className="flex min-w-0 flex-col gap-1">
      <label htmlFor={own} className={hideLabel ? 'sr-only' : 'font-medium'}>
        {label}
      </label>
      {hint ? (
        <span id={`${own}-hint`} className="text-small text-soft">
          {hint}
        </span>
      ) : null}
      {children({
        id: own,
        'aria-describedby': described || undefined,
        'aria-invalid': error ? true : undefined,
        required: required || undefined,
      })}
      {/* Always there, so that a sentence that comes up after the field was left is spoken. */}
      <span aria-live="polite" className="contents">
        {error ? <FieldError id={`${own}-error`}>{error}</FieldError> : null}
      </span>
    </div>
  )
}

/** The sentence under a control that says what is wrong; a mark stands before it, so that colour is not alone. */
export function FieldError({ id, children }: { id?: string; children: ReactNode }) {
  return (
    <span id={id} className="flex items-baseline gap-1.5 text-small font-medium text-danger">
      <svg aria-hidden="true" width="11" height="11" viewBox="0 0 11 11" className="shrink-0">
        <path d="M5.5 0.5 L10.7 10.5 H0.3 Z" fill="currentColor" />
      </svg>
      {children}
    </span>
  )
}
