/** A column's name in the table: `resinKind` → `resin_kind`. */
export const sqlName = (column: string): string => column.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
