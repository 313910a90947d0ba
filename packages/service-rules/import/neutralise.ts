/** Beginnings a spreadsheet may take for a formula, with blanks before them, and the control characters some programs skip. */
const formulaStart = /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/
/** A negative number stays a number. A plus is not spared: "+441632960123" would lose it. */
const plainNegative = /^-\d+(?:[.,]\d+)?%?$/

/**
 * A cell that no spreadsheet runs: an apostrophe is put before text that begins like a formula. A text that already begins with apostrophes before such a beginning gets one more,
 * so that `restoreCell(neutraliseFormula(cell)) === cell` for every text.
 */
export function neutraliseFormula(cell: string): string {
  if (plainNegative.test(cell)) return cell
  return formulaStart.test(withoutApostrophes(cell)) ? `'${cell}` : cell
}

/** Takes off what `neutraliseFormula` added. A cell that was never neutralised and begins with '= loses that apostrophe, as it would in a spreadsheet. */
export function restoreCell(cell: string): string {
  return cell.startsWith("'") && formulaStart.test(withoutApostrophes(cell)) ? cell.slice(1) : cell
}

function withoutApostrophes(cell: string): string {
  return cell.replace(/^'+/, '')
}
