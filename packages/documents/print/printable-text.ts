/** Signs outside Windows-1252 that our own texts use, and how paper writes them. */
const SIGNS: Readonly<Record<string, string>> = {
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '≥': 'at least ',
  '≤': 'at most ',
  '−': '-',
  '‑': '-',
  '→': 'to',
  '\u202f': '\u00a0',
  '\u2009': ' ',
  '\t': ' ',
  '\n': ' ',
  '\r': ' ',
}

/** Letters that no mark can be taken off. */
const LETTERS: Readonly<Record<string, string>> = { ł: 'l', Ł: 'L', đ: 'd', Đ: 'D', ı: 'i', ħ: 'h', ŧ: 't' }

/** What Windows-1252, the encoding of the standard PDF typefaces, holds beyond Latin-1. */
const BEYOND_LATIN_1 = new Set('€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ')

const known = (sign: string): boolean => {
  const code = sign.codePointAt(0) ?? 0
  return (code >= 0x20 && code <= 0x7e) || (code >= 0xa0 && code <= 0xff) || BEYOND_LATIN_1.has(sign)
}

/**
 * Text in the letters the standard PDF typefaces have: eighths as "52 1/8", a letter with an unknown mark without it, and "?" for what has no
 * likeness (a name in another script), so that nothing is dropped unseen.
 */
export function printable(text: string): string {
  const spaced = text.replace(/(\d)([⅛⅜⅝⅞⅓⅔])/g, '$1 $2')
  return [...spaced].map(printableSign).join('')
}

function printableSign(sign: string): string {
  if (known(sign)) return sign
  const replaced = SIGNS[sign] ?? LETTERS[sign]
  if (replaced !== undefined) return replaced
  const bare = [...sign.normalize('NFD')].filter((part) => known(part)).join('')
  return bare === '' ? (/\p{Mark}|\p{Control}/u.test(sign) ? '' : '?') : bare
}
