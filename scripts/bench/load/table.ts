/** Rows under a header, numbers to the right, for people. */
export function table(title: string, header: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  const texts = [header, ...rows].map((row) => row.map(String))
  const widths = header.map((_, column) => Math.max(...texts.map((row) => (row[column] ?? '').length)))
  const line = (row: readonly string[]) =>
    row.map((text, i) => (i === 0 ? text.padEnd(widths[i] ?? 0) : text.padStart(widths[i] ?? 0))).join('  ')
  const [head = [], ...body] = texts
  return ['', title, line(head), widths.map((width) => '-'.repeat(width)).join('  '), ...body.map(line)].join('\n')
}
