import type { InputHTMLAttributes, LabelHTMLAttributes, Ref } from 'react'
import { controlClass } from './control-class.ts'
import { FindMark } from './marks.tsx'

export type FindInputProps = {
  label: string
  labelProps: LabelHTMLAttributes<HTMLLabelElement>
  inputProps: InputHTMLAttributes<HTMLInputElement> & { ref?: Ref<HTMLInputElement> }
  placeholder: string
  /** A key that leads here, shown while the field is empty. */
  keyHint?: string
}

/** The field of a search with its lens; what it finds is drawn by whoever uses it. */
export function FindInput({ label, labelProps, inputProps, placeholder, keyHint }: FindInputProps) {
  return (
    <>
      {/* biome-ignore lint/a11y/noLabelWithoutControl: the label's props name the field */}
      <label {...labelProps} className="sr-only">
        {label}
      </label>
      <span className="relative flex min-w-0 grow items-center">
        <span className="pointer-events-none absolute left-3 text-soft">
          <FindMark size={16} />
        </span>
        <input
          {...inputProps}
          type="text"
          inputMode="search"
          enterKeyHint="go"
          autoComplete="off"
          spellCheck={false}
          maxLength={100}
          placeholder={placeholder}
          aria-keyshortcuts={keyHint}
          className={`${controlClass} text-ellipsis pl-9 ${keyHint ? 'sm:pr-9' : ''}`}
        />
        {keyHint && inputProps.value === '' ? (
          <span aria-hidden="true" className="pointer-events-none absolute right-2 max-sm:hidden">
            <kbd className="border border-line px-1.5 text-small text-soft">{keyHint}</kbd>
          </span>
        ) : null}
      </span>
    </>
  )
}
