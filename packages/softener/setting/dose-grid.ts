import type { ResinKindId } from '@almanac/records/resin-kind'
import { KCL_G_PER_EQ, NACL_G_PER_EQ } from '@almanac/units/concentration'
import type { FirmFigures } from '../firm/firm-figures.ts'
import { capacityKgrFt3, type Salt, stoichiometricGrPerLb } from '../water/capacity.ts'
import { leakageMgL } from '../water/capacity-effects.ts'

/** Doses compared, lb NaCl per ft³: 4 to 15 by halves. Below 4 no curve reaches; above 15 more salt hardly helps. */
const LEAST_DOSE = 4
const MOST_DOSE = 15
const DOSE_STEP = 0.5

/** One dose with what depends on nothing but resin, salt and the firm's curve. Doses in lb of the salt itself. */
export type GridDose = {
  saltLbFt3: number
  asNaClLbFt3: number
  /** Operating capacity of new resin at 60 °F, gr/ft³, and the most that this salt can do by charge. */
  capacityGrFt3: number
  limitGrFt3: number
  /** Leakage in water of up to 1,000 mg/L dissolved solids, mg/L. */
  leakageMgL: number
}

const grids = new WeakMap<FirmFigures['curves'], Map<string, readonly GridDose[]>>()

/** The doses for a resin and a salt, worked out once for each set of curves. */
export function doseGrid(curves: FirmFigures['curves'], kind: ResinKindId, salt: Salt): readonly GridDose[] {
  let ofCurves = grids.get(curves)
  if (ofCurves === undefined) {
    ofCurves = new Map()
    grids.set(curves, ofCurves)
  }
  const key = salt === 'NaCl' ? kind : `${kind} KCl`
  let grid = ofCurves.get(key)
  if (grid === undefined) {
    grid = makeGrid(curves, kind, salt)
    ofCurves.set(key, grid)
  }
  return grid
}

function makeGrid(curves: FirmFigures['curves'], kind: ResinKindId, salt: Salt): GridDose[] {
  const grid: GridDose[] = []
  for (let asNaCl = LEAST_DOSE; asNaCl <= MOST_DOSE; asNaCl += DOSE_STEP) grid.push(gridDose(curves, kind, salt, asNaCl))
  return grid
}

/** One dose by itself; `asNaClLbFt3` in lb NaCl per ft³, above zero. Potassium chloride takes 1.276 times as much by weight. */
function gridDose(curves: FirmFigures['curves'], kind: ResinKindId, salt: Salt, asNaClLbFt3: number): GridDose {
  const saltLbFt3 = salt === 'NaCl' ? asNaClLbFt3 : (asNaClLbFt3 * KCL_G_PER_EQ) / NACL_G_PER_EQ
  return {
    saltLbFt3,
    asNaClLbFt3,
    capacityGrFt3: 1000 * capacityKgrFt3(kind, saltLbFt3, salt, curves[kind]),
    limitGrFt3: stoichiometricGrPerLb(salt) * saltLbFt3,
    leakageMgL: leakageMgL(asNaClLbFt3, null) ?? 0,
  }
}
