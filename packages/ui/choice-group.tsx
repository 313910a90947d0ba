import { type ReactNode, useId } from 'react'
import { FieldError, type FieldWords } from './field.tsx'

/** One answer of a group; `hint` says what follows from it. */
export type GroupChoice = { value: string; label: ReactNode; hint?: ReactNode; disabled?: boolean }

export type ChoiceGroupProps = FieldWords & {
  name?: string
  choices: readonly GroupChoice[]
  value?: string
  onChange?: (value: string) => void
  /** Lay short answers side by side instead of one below the other. */
  inline?: boolean
}

/** One of several answers as large targets: radio buttons whose whole box can be pressed. */
export function ChoiceGroup({ label, hint, error, required, name, choices, value, onChange, inline }: ChoiceGroupProps) {
  const id = useId()
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ')
  return (
    <fieldset aria-describedby={described || undefined} className="flex min-w-0 flex-col gap-2">
      <legend className="mb-1 font-medium">{label}</legend>
      {hint ? (
        <span id={`${id}-hint`} className="text-small text-soft">
          {hint}
        </span>
      ) : null}
      <div className={inline ? 'flex flex-wrap gap-2' : 'flex flex-col gap-2'}>
        {choices.map((c) => (
          <label
            key={c.value}
            className="flex min-h-control cursor-pointer items-start gap-3 rounded-sheet border border-edge px-3.5 py-2 hover:bg-wash has-checked:border-ink has-checked:bg-wash has-checked:outline has-checked:outline-ink has-disabled:cursor-not-allowed has-disabled:text-soft in-[.field]:py-3"
          >
            <input
              type="radio"
              name={name ?? id}
              value={c.value}
              required={required}
              disabled={c.disabled}
              checked={value === undefined ? undefined : value === c.value}
              onChange={onChange ? () => onChange(c.value) : undefined}
              className="mt-[0.2em] size-4.5 shrink-0 accent-ink in-[.field]:size-6"
            />
            <span>
              {c.label}
              {c.hint ? <span className="block text-small text-soft">{c.hint}</span> : null}
            </span>
          </label>
        ))}
      </div>
      {error ? <FieldError id={`${id}-error`}>{error}</FieldError> : null}
    </fieldset>
  )
}
