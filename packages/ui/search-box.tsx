import { useWords } from '@almanac/words/use-words'
import { type FormHTMLAttributes, type InputHTMLAttributes, useId } from 'react'
import { buttonClass } from './button-class.ts'
import { controlClass } from './control-class.ts'

export type SearchBoxProps = {
  /** Read to those who don't see the box: "Search sites". */
  label: string
  /** Example of what one may type. */
  placeholder?: string
  /** Name of the query parameter when the form is sent. */
  name?: string
  action?: string
  onSubmit?: FormHTMLAttributes<HTMLFormElement>['onSubmit']
} & Pick<InputHTMLAttributes<HTMLInputElement>, 'value' | 'defaultValue' | 'onChange'>

/** A search that works as a plain form and as a controlled box. */
export function SearchBox({ label, placeholder, name = 'q', action, onSubmit, ...input }: SearchBoxProps) {
  const id = useId()
  const words = useWords('common')
  return (
    <search>
      <form action={action} onSubmit={onSubmit} className="flex max-w-xl">
        <label htmlFor={id} className="sr-only">
          {label}
        </label>
        <input
          {...input}
          id={id}
          type="search"
          name={name}
          placeholder={placeholder}
          autoComplete="off"
          className={`${controlClass} min-w-0 grow not-focus-visible:border-r-0`}
        />
        <button type="submit" className={buttonClass('line')}>
          {words('search')}
        </button>
      </form>
    </search>
  )
}
