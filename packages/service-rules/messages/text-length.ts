/** The letters of the short alphabet of texts, one unit each (3GPP TS 23.038, 6.2.1). */
const SHORT = new Set(
  '@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !"#¤%&\'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà',
)
/** Those that take two units (6.2.1.1). */
const SHORT_TWO = new Set('\f^{}\\[~]|€')

/** Units in a text that stands alone, and in each part of a longer one, whose head takes seven octets of 140 (TS 23.040, 9.2.3.24.1). */
const ROOM = { short: { alone: 160, part: 153 }, wide: { alone: 70, part: 67 } } as const

export type TextLength = {
  /** Letters as people count them. */
  characters: number
  parts: number
  /** The first letter that the short alphabet lacks, so that a text holds 70 letters instead of 160; null where it lacks none. */
  wide: string | null
}

/** How many texts a message goes out as. A letter of two units is never parted. */
export function textLength(text: string): TextLength {
  const letters = [...text]
  const wide = letters.find((one) => !SHORT.has(one) && !SHORT_TWO.has(one)) ?? null
  const room = wide === null ? ROOM.short : ROOM.wide
  const units = letters.map((one) => (wide === null ? (SHORT_TWO.has(one) ? 2 : 1) : one.length))
  if (units.reduce((sum, one) => sum + one, 0) <= room.alone) return { characters: letters.length, parts: 1, wide }
  let [parts, used] = [1, 0]
  for (const one of units) {
    if (used + one > room.part) [parts, used] = [parts + 1, 0]
    used += one
  }
  return { characters: letters.length, parts, wide }
}

const PLAIN: readonly [RegExp, string][] = [
  [/[‘’ʼ]/g, "'"],
  [/[“”„]/g, '"'],
  [/[–—]/g, '-'],
  [/…/g, '...'],
  [/[\u00a0\u202f\u2009]/g, ' '],
]

/** A text with plain quotes, dashes and spaces: the printer's own would make each part less than half as long. */
export const plainMarks = (text: string): string => PLAIN.reduce((now, [odd, plain]) => now.replace(odd, plain), text)
