import { useWords } from '@almanac/words/use-words'
import type { InputHTMLAttributes } from 'react'
import { controlClass } from './control-class.ts'
import { Field, type FieldWords } from './field.tsx'

export type NumberInputProps = FieldWords &
  Omit<InputHTMLAttributes<HTMLInputElement>, 'className' | 'required' | 'type'> & {
    hideLabel?: boolean
    /** Unit of the number, or the units one may choose from. */
    unit: string | readonly string[]
    /** The chosen unit, when there are several. */
    chosenUnit?: string
    onUnit?: (unit: string) => void
  }

/**
 * A number with its unit. The text is handed on as typed ("1½", "52,5"): reading it is the work of the units package, and what was
 * typed must not change under the hand.
 */
export function NumberInput({ label, hint, error, required, hideLabel, id, unit, chosenUnit, onUnit, ...rest }: NumberInputProps) {
  const words = useWords('common')
  return (
    <Field {...{ label, hint, error, required, hideLabel, id }}>
      {(wired) => (
        <span className="flex max-w-64">
          <input
            {...rest}
            {...wired}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            className={`${controlClass} min-w-0 grow text-right not-focus-visible:border-r-0`}
          />
          {typeof unit === 'string' ? (
            <span className="flex min-w-14 shrink-0 items-center rounded-r-sheet border border-edge bg-wash px-2.5 text-soft">{unit}</span>
          ) : (
            <select
              aria-label={typeof label === 'string' ? words('unitOf', { label }) : words('unitOfThis')}
              value={chosenUnit ?? unit[0]}
              onChange={(event) => onUnit?.(event.target.value)}
              className="min-h-control rounded-r-sheet border border-edge bg-wash px-2 text-ink"
            >
              {unit.map((u) => (
                <option key={u}>{u}</option>
              ))}
            </select>
          )}
        </span>
      )}
    </Field>
  )
}
