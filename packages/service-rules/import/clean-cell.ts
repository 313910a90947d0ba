import { restoreCell } from './neutralise.ts'

/** Words that firms write into a cell they have nothing for. */
const silent = /^(?:[-–—.?*/\\]+|n\.?\s?\/?\s?a\.?|none known|unknown|not known|unk\.?|tbd|tbc|null|nil|#n\/a|#value!|#ref!|undefined)$/i

/**
 * The text of a cell as a person means it: what a problem file added is taken off, odd spaces are made plain, runs of them count once (many rules would weigh a
 * long run again from each of its places), ends are trimmed.
 */
export function cleanCell(cell: string | undefined): string {
  return restoreCell(cell ?? '')
    .replace(/[\u00a0\u2007\u202f\u200b\ufeff]/g, ' ')
    .replace(/\s{2,}/g, (run) => (/[\r\n]/.test(run) ? '\n' : ' '))
    .trim()
}

/** True for an empty cell and for "n/a", "unknown", "-" and the like. */
export function isSilent(text: string): boolean {
  return text === '' || silent.test(text)
}

/** The name of a column without a header, as a spreadsheet counts: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  let letters = ''
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) letters = String.fromCharCode(65 + (rest % 26)) + letters
  return letters
}
