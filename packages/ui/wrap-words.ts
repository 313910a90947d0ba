/** Breaks a text at spaces into lines of at most `most` letters; a longer word stands alone on its line, and a number keeps its unit. */
export function wrapWords(text: string, most: number): string[] {
  const lines: string[] = []
  for (const word of text.replace(/([\d⅛¼⅜½⅝¾⅞]) (?=[^\d\s])/g, '$1\u00a0').split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}
