export type LengthUnit = 'in' | 'ft' | 'mm' | 'cm' | 'm'

/** Millimetres in one unit; the inch is 25.4 mm exactly (international yard and pound, 1959). */
const MM: Record<LengthUnit, number> = { in: 25.4, ft: 304.8, mm: 1, cm: 10, m: 1000 }

/** Converts a length between units; exact factors. */
export function convertLength(value: number, from: LengthUnit, to: LengthUnit): number {
  return from === to ? value : (value * MM[from]) / MM[to]
}

export const inToMm = (lengthIn: number): number => lengthIn * 25.4
export const inToM = (lengthIn: number): number => lengthIn * 0.0254
