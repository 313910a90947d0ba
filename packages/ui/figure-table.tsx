export type PlotRow = { key: string; cells: readonly string[]; strong?: boolean }

export type FigureTableProps = {
  /** What the table holds; read aloud, not shown. */
  caption: string
  heads: readonly string[]
  /** The first cell names the row, the others are figures. */
  rows: readonly PlotRow[]
  /** How wide or high the box may grow before it scrolls by itself. */
  className: string
}

/** Named rows of figures in a box that scrolls by itself where they are too many or the screen is narrow. */
export function FigureTable({ caption, heads, rows, className }: FigureTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard
    <section className={className} aria-label={caption} tabIndex={0}>
      <table className="w-full border-collapse text-left">
        <caption className="sr-only">{caption}</caption>
        <thead className="text-small text-soft">
          <tr>
            {heads.map((head, i) => (
              <th key={head} scope="col" className={`py-1.5 pr-3 align-bottom font-medium last:pr-0 ${i > 0 ? 'text-right' : ''}`}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className="border-t border-line">
              {row.cells.map((cell, i) =>
                i === 0 ? (
                  <th key={heads[i]} scope="row" className={`py-1.5 pr-3 ${row.strong ? 'font-semibold' : 'font-normal'}`}>
                    {cell}
                  </th>
                ) : (
                  <td key={heads[i]} className="py-1.5 pr-3 text-right last:pr-0">
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
