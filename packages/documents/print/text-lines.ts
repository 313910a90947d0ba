/** Widths of the standard typeface's letters, thousandths of its size (Adobe's metrics of Helvetica); letters not listed are 556 wide, capitals 690. */
const WIDTHS: readonly (readonly [letters: string, width: number])[] = [
  [" !,./:;I[\\]ft'|`’‘·", 278],
  ['ijl', 222],
  ['()-r°', 333],
  ['ckszxvyJ', 500],
  ['mM', 833],
  ['w', 722],
  ['W%', 944],
  ['“”', 333],
  ['—', 1000],
  ['½¼¾', 834],
  ['×±', 584],
]
const WIDTH_OF = new Map(WIDTHS.flatMap(([letters, width]) => [...letters].map((letter) => [letter, width] as const)))

/** Width of a text in points, within a few hundredths of what is printed. */
export function textWidth(text: string, fontSize: number): number {
  let sum = 0
  for (const letter of text) sum += WIDTH_OF.get(letter) ?? (letter >= 'A' && letter <= 'Z' ? 690 : 556)
  return (sum * fontSize) / 1000
}

/** How many lines a text takes at a width, broken at spaces as the sheet does. */
export function textLines(text: string, fontSize: number, width: number): number {
  let lines = 1
  let filled = 0
  const space = textWidth(' ', fontSize)
  for (const word of text.split(' ')) {
    const wide = textWidth(word, fontSize)
    if (filled > 0 && filled + space + wide > width) {
      lines += 1
      filled = wide
    } else filled += (filled > 0 ? space : 0) + wide
  }
  return lines
}
