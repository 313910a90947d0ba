import { asChosen, chosenColumns, type EarlierChoices } from './earlier-choices.ts'
import type { ImportField } from './fields.ts'
import { describeField } from './fields.ts'
import { findHeader } from './find-header.ts'
import { bareGroups } from './hardness-by-supply.ts'
import { type ColumnJudgement, judgeColumn } from './judge-column.ts'
import { settleColumn } from './settle-column.ts'
import type { FileSuggestion } from './suggestion-types.ts'

const ROWS_SAMPLED = 400
/** Below this a column is left for the person to choose. */
const LEAST_SCORE = 0.45

/**
 * Suggests what each column of a firm's file holds, from its header's words and from its contents. Contents decide where the header is silent, and
 * overrule it where they plainly contradict it.
 *
 * @param rows the file as text, its title lines and header included
 * @param today ISO day, to tell dates from other numbers
 * @param headingLine the line that a person says names the columns, counted from 1; null where none does
 * @param earlier what the firm chose for columns with the same headings before: that stands
 */
export function suggestColumns(
  rows: readonly (readonly string[])[],
  today: string,
  earlier: EarlierChoices = [],
  headingLine?: number | null,
): FileSuggestion {
  const finding = findHeader(rows, headingLine)
  const records = sample(rows.slice(finding.firstRecordRow))
  const width = Math.max(0, ...rows.slice(0, 50).map((row) => row.length), ...records.map((row) => row.length))
  const headerCells = finding.headerRow === null ? [] : (rows[finding.headerRow] ?? [])
  const header = Array.from({ length: width }, (_, column) => (headerCells[column] ?? '').trim())
  const judgements = header.map((title, column) => judgeColumn(column, title, records, today))
  const chosen = chosenColumns(header, earlier)
  const taken = new Map([...chosen].flatMap(([column, { field }]) => (field === null ? [] : [[field, header[column] ?? ''] as const])))
  const fields = assign(
    judgements.filter(({ column }) => !chosen.has(column)),
    taken,
  )
  const fieldOf = (column: number) => (chosen.has(column) ? chosen.get(column)?.field : fields.get(column)) ?? null
  const supplyColumn = judgements.find(({ column }) => fieldOf(column) === 'supplyName')?.column
  const columns = judgements.map((judgement) => {
    const { column } = judgement
    const choice = chosen.get(column)
    const isHardness = fieldOf(column) === 'hardness' && supplyColumn !== undefined
    const settled = settleColumn(judgement, fieldOf(column), isHardness ? bareGroups(records, column, supplyColumn) : [])
    return choice ? asChosen(settled, choice) : settled
  })
  return { ...finding, header, columns }
}

/** The strongest pairs of column and field first; a field is given once, and not where it is `taken` by a column with that heading, except where its further columns join it by name. */
function assign(judgements: readonly ColumnJudgement[], taken: Map<ImportField, string>): Map<number, ImportField> {
  const pairs = judgements
    .flatMap((judgement) => [...judgement.scores].map(([field, score]) => ({ judgement, field, score })))
    .filter(({ score }) => score >= LEAST_SCORE)
    .sort((a, b) => b.score - a.score || a.judgement.column - b.judgement.column)
  const given = new Map<number, ImportField>()
  for (const { judgement, field, score } of pairs) {
    if (given.has(judgement.column)) continue
    const other = taken.get(field)
    if (field === 'phone' && other !== undefined) {
      // A further column of numbers, whatever stands over it.
      judgement.scores.set('otherPhone', score)
      judgement.from.set('otherPhone', judgement.from.get(field) ?? 'contents')
      given.set(judgement.column, 'otherPhone')
      taken.set('otherPhone', judgement.header)
      continue
    }
    if (other !== undefined && !mayJoin(field, other, judgement.header)) continue
    given.set(judgement.column, field)
    taken.set(field, judgement.header)
  }
  return given
}

/** First and last name, two lines of an address, notes and comments: columns that belong together. */
function mayJoin(field: ImportField, one: string, other: string): boolean {
  if (describeField(field).joinWith === null || one === '' || other === '') return false
  const both = [one.toLowerCase(), other.toLowerCase()]
  if (field === 'customerName') return both.every((header) => /first|last|sur|fore|given|family/.test(header))
  if (field === 'street') return both.every((header) => /addr|street|house/.test(header))
  return field === 'notes' || field === 'accessNotes' || field === 'otherPhone'
}

/** Rows from all over the file: what stands at the end may be written otherwise than at the start. */
function sample(records: readonly (readonly string[])[]): readonly (readonly string[])[] {
  if (records.length <= ROWS_SAMPLED) return records
  const step = records.length / ROWS_SAMPLED
  return Array.from({ length: ROWS_SAMPLED }, (_, index) => records[Math.floor(index * step)] ?? [])
}
