import { factColumns, type ImportKind } from '@almanac/records/import-facts'

/** A value as it stands in a column; days are 'YYYY-MM-DD'. */
export type Value = string | number | boolean | null
/** One fact: the columns that only make sense together, as the earliest and latest day of a beginning. */
export type ImportedFact = Record<string, Value>
export type ImportedFacts = Record<string, ImportedFact>
export type EnteredValues = Record<string, { value: number; unit: string }>

/** True where nothing is known: no column holds a value. A resin kind "unknown" is no value. */
export function isUnknown(fact: ImportedFact | undefined): boolean {
  return fact === undefined || Object.values(fact).every((value) => value === null || value === 'unknown')
}

/** True where two facts say the same, column by column. */
export function sameFact(one: ImportedFact | undefined, other: ImportedFact | undefined): boolean {
  if (isUnknown(one) || isUnknown(other)) return isUnknown(one) && isUnknown(other)
  const keys = new Set([...Object.keys(one ?? {}), ...Object.keys(other ?? {})])
  return [...keys].every((key) => (one?.[key] ?? null) === (other?.[key] ?? null))
}

/** Picks a kind's facts out of a stored row whose days are already text. */
export function factsOf(kind: ImportKind, row: Record<string, unknown>): ImportedFacts {
  return Object.fromEntries(
    Object.entries(factColumns[kind]).map(([fact, columns]) => [
      fact,
      Object.fromEntries(columns.map((column) => [column, (row[column] ?? null) as Value])),
    ]),
  )
}

/** All columns of some facts in one record. */
export function columnsOf(facts: ImportedFacts): Record<string, Value> {
  return Object.assign({}, ...Object.values(facts)) as Record<string, Value>
}
