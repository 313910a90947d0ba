/** How far a constant may be trusted: published, derived from exact definitions, a maker's typical data sheet, trade habit, or memory. */
export type Basis = 'published' | 'derived' | 'typical data sheet' | 'common practice' | 'from memory'

/** A constant as data: the number, its unit, and where it comes from. `source` says "common practice, no source" when there is none. */
export type Sourced = { readonly value: number; readonly unit: string; readonly basis: Basis; readonly source: string }

export const COMMON_PRACTICE = 'common practice, no source'
export const FROM_MEMORY = 'from memory, unverified'
export const EXACT = 'derived from exact definitions'
export const DATA_SHEET = 'typical data sheet'
