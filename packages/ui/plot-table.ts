/** A plot's figures as a table: heads, then rows of the same length. */
export type PlotTable = { heads: readonly string[]; rows: readonly (readonly string[])[] }
