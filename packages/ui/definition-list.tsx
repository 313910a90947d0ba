import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'

/** One fact: its name, its value, and where it came from ("label on the unit", "last visit, 3 May 2024", "assumed"). */
export type Fact = { name: ReactNode; value: ReactNode; from?: ReactNode; key?: string }

export type DefinitionListProps = {
  facts: readonly Fact[]
  /** What to show where the value is unknown. */
  unknown?: ReactNode
}

/** Facts with their values and where each came from; an unknown value says so. */
export function DefinitionList({ facts, unknown }: DefinitionListProps) {
  const words = useWords('common')
  // Without any "where from" the third column would stand empty and squeeze the values.
  const columns = facts.some((fact) => fact.from) ? 'sm:grid-cols-[minmax(8rem,2fr)_3fr_3fr]' : ''
  return (
    <dl className="border-t border-line">
      {facts.map((fact, i) => {
        const missing = fact.value === undefined || fact.value === null || fact.value === ''
        return (
          <div
            key={fact.key ?? (typeof fact.name === 'string' ? fact.name : i)}
            className={`grid grid-cols-[minmax(7rem,2fr)_3fr] gap-x-4 border-b border-line py-2 ${columns}`}
          >
            <dt className="text-soft">{fact.name}</dt>
            <dd className={missing ? 'text-soft italic' : ''}>{missing ? (unknown ?? words('valueUnknown')) : fact.value}</dd>
            {fact.from ? <dd className="text-small text-soft max-sm:col-start-2">{fact.from}</dd> : null}
          </div>
        )
      })}
    </dl>
  )
}
