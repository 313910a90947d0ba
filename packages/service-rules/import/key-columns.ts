import { cleanCell } from './clean-cell.ts'
import type { ImportField } from './fields.ts'
import { columnName } from './gather-cells.ts'
import type { ColumnMapping } from './import-types.ts'

/** A kind of fact that a firm's work rests on, which no chosen column holds: what follows from that, in one sentence. */
export type MissingColumn = { key: string; sentence: string }

/** Facts without which little can be said of any row. What the notes tell is read wherever notes are chosen. */
const KEY_FACTS: readonly { key: string; fields: readonly ImportField[]; sentence: (notes: boolean) => string }[] = [
  {
    key: 'began',
    fields: ['installed', 'bedBegan'],
    sentence: (notes) =>
      notes
        ? 'No column says when the softener or its resin went in: only dates in the notes will be known.'
        : 'No column says when the softener or its resin went in: every date will be unknown.',
  },
  {
    key: 'tank',
    fields: ['tank', 'resinVolume'],
    sentence: () => 'No column says how large the tank is: what to bring to a rebed will be unknown.',
  },
  {
    key: 'reach',
    fields: ['phone', 'email'],
    sentence: () => 'No column holds a phone number or an email: nobody can be called.',
  },
  { key: 'street', fields: ['street'], sentence: () => 'No column holds the street: sites will be named after their customers.' },
  {
    key: 'water',
    fields: ['hardness', 'supplyName'],
    sentence: () => 'No column tells of the water: usual water will be assumed until you say.',
  },
]

/**
 * What the chosen columns leave unknown for every row, the gravest first; empty when nothing. Said before the rows are checked, and again at the check, since a list whose
 * dates were passed over looks complete.
 */
export function missingColumns(mapping: ColumnMapping): MissingColumn[] {
  const chosen = new Set(mapping.columns.map((choice) => choice.field))
  return KEY_FACTS.filter(({ fields }) => !fields.some((field) => chosen.has(field))).map(({ key, sentence }) => ({
    key,
    sentence: sentence(chosen.has('notes')),
  }))
}

/** Columns with a heading that are left out, by the names the firm gave them. */
export function leftOutColumns(mapping: ColumnMapping): string[] {
  return mapping.columns
    .filter(({ column, field }) => field === null && cleanCell(mapping.header[column]) !== '')
    .map(({ column }) => columnName(mapping, column))
}
