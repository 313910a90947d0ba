import { cleanCell, isSilent } from './clean-cell.ts'
import type { ImportField } from './fields.ts'
import { columnName, type GatheredCell } from './gather-cells.ts'
import type { ColumnMapping, RowProblem } from './import-types.ts'
import { normaliseText } from './normalise.ts'

const TOTAL =
  /^(?:grand |sub ?)?totals?\b|^sub ?totals?\b|^(?:sum|summe|gesamt|zwischensumme|suma|count|average)\b|^(?:end of list|page \d+)\b/
/** Without capitals alone a name may stand there by itself. */
const TITLE = /^[^\p{Ll}]{3,}$|:$/u

/** What a total never has. */
const OF_A_CUSTOMER: readonly ImportField[] = ['street', 'phone', 'email', 'contactName', 'postcode']

/** Why a row is no customer's: it repeats the headings, it is a total, or the title of a part of the list; null for a row to be read. */
export function whyNobody(
  cells: readonly string[],
  gathered: ReadonlyMap<ImportField, GatheredCell>,
  mapping: ColumnMapping,
): RowProblem | null {
  const filled = cells.flatMap((cell, column) => {
    const text = cleanCell(cell)
    return isSilent(text) ? [] : [{ text, column }]
  })
  const first = filled[0]
  if (!first) return null
  const name = gathered.get('customerName')
  const problem = (reason: string): RowProblem => ({
    ...{ kind: 'left-out', column: name?.column ?? columnName(mapping, first.column), field: name ? 'customerName' : null },
    ...{ value: first.text.slice(0, 100), reason },
  })
  const same = filled.filter(({ text, column }) => normaliseText(text) === normaliseText(mapping.header[column] ?? ''))
  if (same.length >= 2 && same.length * 2 > filled.length)
    return problem('This row repeats the headings, so it was left out. Nothing to do.')
  const chosen = mapping.columns.filter((choice) => choice.field !== null).length
  const others = filled.length - 1
  if (TOTAL.test(normaliseText(first.text)) && !OF_A_CUSTOMER.some((field) => gathered.has(field)))
    return problem('This row looks like a total, so it was left out. If it is a customer, write the name in another way.')
  if (others === 0 && chosen >= 3 && TITLE.test(first.text))
    return problem('This row looks like a title within the list, so it was left out. If it is a customer, fill in another cell.')
  return null
}
