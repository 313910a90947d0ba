export interface WrittenSize {
  diameterIn: number
  heightIn: number
}

export type TakenSize = { ok: true; size: WrittenSize | null; rest: string; assumption: string | null } | { ok: false; reason: string }

const inches = '(?:"|\\s*(?:inch(?:es)?|in\\b\\.?))?'
const words = '(?:\\s*(?:dia(?:m(?:eter)?)?\\.?|wide|tall|high|[dh]\\b))?'
const pair = new RegExp(
  `(?<![\\d.])(\\d{1,4}(?:[.,]\\d+)?)${inches}${words}\\s*(?:x|\\*|\\bby\\b|/|-)\\s*(\\d{2,4}(?:[.,]\\d+)?)(\\s*(?:mm|cm))?${inches}${words}(?![\\d])`,
)
/** A third number is the opening at the top, in inches: 2.5 and 4 are the usual threads. */
const opening = /^\s*x?\s*(?:2\.5|2[\s-]?1\/2|4|6)\s*"?(?=\s|$)/

/** The size of a tank within a lower-case text, diameter first, in inches; also "1054" written together, cm and mm. */
export function takeTankSize(text: string): TakenSize {
  const match = pair.exec(text)
  if (!match) return takeCompact(text)
  const rest = text.slice(match.index + match[0].length)
  const left = `${text.slice(0, match.index)} ${rest.replace(opening, ' ')}`
  if (pair.test(left)) return { ok: false, reason: 'there are two sizes in it.' }
  const unit = match[3]?.trim()
  const scale = unit === 'mm' ? 25.4 : unit === 'cm' ? 2.54 : 1
  const first = inInches(match[1], scale)
  const second = inInches(match[2], scale)
  const swapped = first > second
  const size = swapped ? { diameterIn: second, heightIn: first } : { diameterIn: first, heightIn: second }
  if (!isPlausible(size)) return { ok: false, reason: `no tank measures ${size.diameterIn} by ${size.heightIn} in.` }
  const notes: string[] = []
  if (unit) notes.push(`${unit} were turned into inches.`)
  if (swapped) notes.push(`The height came first: read as ${size.diameterIn} x ${size.heightIn} in.`)
  return { ok: true, size, rest: left, assumption: notes.join(' ') || null }
}

/** Sizes common in the trade; only these are recognised without an x, lest a model number become a tank. Common practice, no source. */
const usualSizes = new Set(
  '6x18 6x35 7x30 7x35 7x40 7x44 8x30 8x35 8x40 8x44 9x35 9x40 9x42 9x48 10x30 10x35 10x40 10x44 10x47 10x54 12x48 12x52 12x65 13x54 13x65 14x65 16x65 18x65 21x62 24x72 30x72 36x72'.split(
    ' ',
  ),
)

/** "1054", "844": one or two digits of diameter, then two of height. */
function takeCompact(text: string): TakenSize {
  const match = /^\s*(\d{1,2})(\d{2})"?\s*(?=$|[a-z(])/.exec(text)
  const size = match ? { diameterIn: Number(match[1]), heightIn: Number(match[2]) } : null
  if (!match || !size || !usualSizes.has(`${size.diameterIn}x${size.heightIn}`))
    return { ok: true, size: null, rest: text, assumption: null }
  if (/^\s*(?:k|gr|mg|l\b|cu|cf|ft|gal)/.test(text.slice(match[0].length))) return { ok: true, size: null, rest: text, assumption: null }
  const assumption = `"${match[0].trim()}" was read as ${size.diameterIn} x ${size.heightIn} in.`
  return { ok: true, size, rest: text.slice(match[0].length), assumption }
}

/** Trade tanks run from about 5 to 63 in across and 13 to 100 in high, always higher than wide. Common practice, no source. */
function isPlausible(size: WrittenSize): boolean {
  return size.diameterIn >= 5 && size.diameterIn <= 63 && size.heightIn >= 13 && size.heightIn <= 100 && size.heightIn > size.diameterIn
}

function inInches(text: string | undefined, scale: number): number {
  return Math.round((Number((text ?? '').replace(',', '.')) / scale) * 10) / 10
}
