import type { ColumnChoice } from './import-types.ts'
import type { ColumnSuggestion } from './suggestion-types.ts'

/** What a firm chose for columns of its earlier lists: a heading, and the choice. */
export type EarlierChoices = readonly (readonly [heading: string, choice: ColumnChoice])[]

const headingOf = (header: string) => header.trim().toLowerCase().replace(/\s+/g, ' ')

/** The choices of lists by heading; of lists with the same heading the first one given counts. */
export function choicesByHeading(lists: readonly (readonly (ColumnChoice & { header: string })[])[]): EarlierChoices {
  const chosen = new Map<string, ColumnChoice>()
  for (const columns of lists)
    for (const { header, column, field, hardnessUnit, concentrationUnit, volumeUnit, dayOrder } of columns) {
      const heading = headingOf(header)
      if (heading === '' || chosen.has(heading)) continue
      chosen.set(heading, { column, field, hardnessUnit, concentrationUnit, volumeUnit, dayOrder })
    }
  return [...chosen]
}

/** The columns of a file whose heading was chosen for, by their number; a heading that stands over two of them says nothing. */
export function chosenColumns(header: readonly string[], earlier: EarlierChoices): Map<number, ColumnChoice> {
  const headings = header.map(headingOf)
  const choices = new Map(earlier)
  const found = headings.map((heading, column) => [column, choices.get(heading)] as const)
  return new Map(
    found.filter((one): one is [number, ColumnChoice] => {
      const heading = headings[one[0]]
      return one[1] !== undefined && headings.filter((other) => other === heading).length === 1
    }),
  )
}

/** A suggestion for a field that was chosen before. What the file itself says of units and dates goes before what was chosen for another one. */
export function asChosen(
  suggestion: ColumnSuggestion,
  { hardnessUnit, concentrationUnit, volumeUnit, dayOrder }: ColumnChoice,
): ColumnSuggestion {
  const { ask, ...settled } = suggestion
  const isOpen = ask !== null
  const unit = <U>(own: U | undefined, chosen: U | undefined) => (isOpen ? (chosen ?? own) : (own ?? chosen))
  const isUndecided = settled.dayOrder === 'undecided' && dayOrder !== undefined
  const answered = isUndecided || (hardnessUnit ?? concentrationUnit ?? volumeUnit) !== undefined
  return {
    ...settled,
    hardnessUnit: unit(settled.hardnessUnit, hardnessUnit),
    concentrationUnit: unit(settled.concentrationUnit, concentrationUnit),
    volumeUnit: unit(settled.volumeUnit, volumeUnit),
    dayOrder: isUndecided ? dayOrder : settled.dayOrder,
    confidence: 'sure',
    reason: 'As you chose it before for a column with this heading.',
    ask: answered ? null : ask,
  }
}
