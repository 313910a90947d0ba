import { EXPORTED, STAYS } from '@almanac/database/export-columns'
import Papa from 'papaparse'

/**
 * Cells that a spreadsheet would take for a formula get an apostrophe before them; telephone numbers and figures, which begin alike, do not.
 * The JSON lines hold each value as it is.
 */
const FORMULA = /^(?:[=@\t\r]|[+-](?![\d\s()./-]*$))/

const cell = (value: unknown) => (value !== null && typeof value === 'object' ? JSON.stringify(value) : value)

/** Lines of a CSV file. */
export const csvLines = (rows: unknown[][]): string =>
  rows.length === 0
    ? ''
    : `${Papa.unparse(
        rows.map((row) => row.map(cell)),
        { newline: '\r\n', escapeFormulae: FORMULA },
      )}\r\n`

/** The mark tells spreadsheets that the letters are UTF-8. */
export const UTF8_MARK = '\ufeff'

/** What stands in the archive, for whoever opens it. */
export const readMe = (company: string, at: string): string =>
  [
    `${company}: everything on record, as of ${at} (UTC).`,
    '',
    'company.json  your company, its people and the tables with their columns and numbers of rows',
    'csv/          one file for each table, for spreadsheets (UTF-8, commas)',
    'json/         the same tables, one JSON object a line, each value exactly as stored',
    'lists/        the lists you imported, as they were read',
    'photographs/  of visits, named by the id in table picture; signatures/ likewise',
    'reports/      service reports as they were mailed, named by the id in table message',
    'letterhead/   the logo of your papers, where you have one',
    '',
    'Each record has an id; columns that end in _id name another record. Days are written YYYY-MM-DD, times in UTC.',
    'Lengths are in inches, volumes in cubic feet, hardness in grains per gallon: each column’s name ends in its unit.',
    'Passwords, sessions and links are in no export. Not exported either:',
    ...Object.entries(STAYS)
      .filter(([name]) => !name.includes('.'))
      .map(([name, why]) => `  ${name}: ${why}`),
    '',
    `${Object.keys(EXPORTED).length} tables.`,
    '',
  ].join('\r\n')
