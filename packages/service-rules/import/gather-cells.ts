import { cleanCell, columnLetters, isSilent } from './clean-cell.ts'
import { describeField, type ImportField } from './fields.ts'
import type { ColumnChoice, ColumnMapping } from './import-types.ts'

/** What a row says for one field, with the column to name when it cannot be read. */
export interface GatheredCell {
  text: string
  column: string
  choice: ColumnChoice
}

/** The texts of a row by field; silent cells are left out, several columns of one field are joined as the field says. */
export function gatherCells(cells: readonly string[], mapping: ColumnMapping): Map<ImportField, GatheredCell> {
  const gathered = new Map<ImportField, GatheredCell>()
  for (const choice of mapping.columns) {
    if (choice.field === null) continue
    const text = cleanCell(cells[choice.column])
    if (isSilent(text)) continue
    const column = columnName(mapping, choice.column)
    const already = gathered.get(choice.field)
    const joinWith = describeField(choice.field).joinWith
    if (!already) gathered.set(choice.field, { text, column, choice })
    else if (joinWith !== null) gathered.set(choice.field, { ...already, text: `${already.text}${joinWith}${text}` })
  }
  return gathered
}

/** A column as its firm names it, or by its letter. */
export function columnName(mapping: Pick<ColumnMapping, 'header'>, column: number): string {
  return cleanCell(mapping.header[column]) || `Column ${columnLetters(column)}`
}

/** What is wrong with a mapping before any row is read, as sentences; empty when it can be used. */
export function mappingProblems(mapping: ColumnMapping): string[] {
  const problems: string[] = []
  const byField = new Map<ImportField, number[]>()
  for (const choice of mapping.columns) {
    if (choice.field !== null) byField.set(choice.field, [...(byField.get(choice.field) ?? []), choice.column])
  }
  if (!byField.has('customerName')) problems.push('Choose the column with the customer name.')
  for (const [field, columns] of byField) {
    const { title, joinWith } = describeField(field)
    if (columns.length > 1 && joinWith === null) {
      problems.push(`"${title}" is filled by ${columns.map((column) => columnName(mapping, column)).join(' and ')}. Choose one of them.`)
    }
  }
  return problems
}
