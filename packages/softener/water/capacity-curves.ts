import type { ResinKindId } from '@almanac/records/resin-kind'

/** Operating capacity, kgr/ft³ as CaCO₃, at salt doses in lb NaCl/ft³, co-current. Points rise in both. */
export type CapacityCurve = {
  readonly id: CapacityCurveId
  readonly label: string
  readonly points: readonly (readonly [saltLbFt3: number, capacityKgrFt3: number])[]
  readonly source: string
}

export type CapacityCurveId = 'data-sheet' | 'keller-standard' | 'keller-fine' | 'michaud' | 'conservative'

/**
 * Sources differ by about a tenth, so each curve is kept and named, and the choice is shown. The data sheets' curve is for 500 mg/L
 * hardness with Ca:Mg 2:1.
 */
export const CAPACITY_CURVES: Readonly<Record<CapacityCurveId, CapacityCurve>> = {
  'data-sheet': {
    id: 'data-sheet',
    label: 'Data sheets, standard mesh',
    points: [
      [5, 20],
      [7.5, 25.4],
      [10, 29],
      [15, 33],
    ],
    source: 'typical data sheets (500 mg/L, Ca:Mg 2:1)',
  },
  'keller-standard': {
    id: 'keller-standard',
    label: 'Keller, standard mesh',
    points: [
      [5, 22.2],
      [10, 29],
      [15, 31.3],
    ],
    source: 'Keller, Basic Ion Exchange, part 2, table 3',
  },
  'keller-fine': {
    id: 'keller-fine',
    label: 'Keller, fine mesh',
    points: [
      [5, 23.9],
      [10, 31.5],
      [15, 34],
    ],
    source: 'Keller, Basic Ion Exchange, part 2, table 3',
  },
  michaud: {
    id: 'michaud',
    label: 'Michaud',
    points: [
      [5, 20],
      [8, 24],
      [12, 30],
    ],
    source: 'Michaud, Water Conditioning & Purification, 2010–2023',
  },
  conservative: {
    id: 'conservative',
    label: 'Public works, careful',
    points: [
      [6, 20],
      [10, 26],
      [15, 30],
    ],
    source: 'Virginia 12 VAC 5-590-900 (6 lb); 10 and 15 lb common practice, no source',
  },
}

/**
 * Curve used where the firm chose none. 10% crosslink takes the curve of 8%: at equal salt the two give nearly the same (from memory);
 * what 10% gains is life.
 */
export function usualCurve(kind: ResinKindId): CapacityCurve {
  return CAPACITY_CURVES[kind === 'fine-mesh' ? 'keller-fine' : 'data-sheet']
}
