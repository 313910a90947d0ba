import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import type { Reserve } from '../firm/firm-figures.ts'
import type { Salt } from '../water/capacity.ts'
import type { GridDose } from './dose-grid.ts'
import { brineGal } from './regeneration-steps.ts'

/** Why a dose will not do. */
export type DoseFault = 'leaks' | 'too-often' | 'iron-stays'

/** One salt dose at this site. Masses in lb of the salt used, for all tanks that regenerate together. */
export type DoseFigures = {
  saltLbFt3: number
  saltLb: number
  /** Operating capacity here: of this age, in this water, gr; and what of it is used before regenerating. */
  capacityGr: number
  usableGr: number
  /** By capacity; `intervalDays` is what it comes to with the longest interval, or in whole days by a timer. */
  days: number
  intervalDays: number
  regenerationsYear: number
  waterGal: number
  saltLbYear: number
  waterGalYear: number
  /** By weight of NaCl with the same charge. */
  grPerLb: number
  galPer1000Gr: number
  leakageMgL: number
  /** Salt and water, in minor units; null where the firm has set no price of salt. */
  costMinorYear: number | null
  fault: DoseFault | null
}

/** What all doses of one site share; every number checked before. */
export type DoseSetting = {
  salt: Salt
  resinFt3: number
  /** Tanks that regenerate together. */
  tanks: number
  /** Share of a new bed's capacity at 60 °F that is left here. */
  capacityShare: number
  dailyGr: number
  reserve: Reserve
  byTimer: boolean
  mostDays: number
  /** Factor on leakage for dissolved solids. */
  solidsFactor: number
  mostLeakageMgL: number
  /** No smaller dose will do, as lb NaCl per ft³: iron in the water. */
  leastAsNaClLbFt3: number
  fixedGal: number
  saltPriceMinorPerLb: number | null
  waterPriceMinorPerGal: number | null
}

/** Days between regenerations = (V·K(S)·f − reserve)/(gal/day · hardness), and what follows from it over a year. */
export function doseFigures(dose: GridDose, at: DoseSetting): DoseFigures {
  const volumeFt3 = at.resinFt3 * at.tanks
  const saltLb = dose.saltLbFt3 * volumeFt3
  const capacityGr = volumeFt3 * Math.min(dose.capacityGrFt3 * at.capacityShare, dose.limitGrFt3)
  const reserveGr = at.reserve.kind === 'days' ? at.reserve.days * at.dailyGr : at.reserve.share * capacityGr
  const usableGr = Math.max(0, capacityGr - reserveGr)
  const days = usableGr / at.dailyGr
  const held = Math.min(days, at.mostDays)
  const intervalDays = Math.max(1, at.byTimer ? Math.floor(held) : held)
  const regenerationsYear = DAYS_PER_YEAR / intervalDays
  const waterGal = at.fixedGal * at.tanks + brineGal(dose.asNaClLbFt3 * volumeFt3)
  const saltLbYear = regenerationsYear * saltLb
  const waterGalYear = regenerationsYear * waterGal
  const leakageMgL = dose.leakageMgL * at.solidsFactor
  return {
    saltLbFt3: dose.saltLbFt3,
    saltLb,
    capacityGr,
    usableGr,
    days,
    intervalDays,
    regenerationsYear,
    waterGal,
    saltLbYear,
    waterGalYear,
    grPerLb: capacityGr / (dose.asNaClLbFt3 * volumeFt3),
    galPer1000Gr: (1000 * waterGal) / capacityGr,
    leakageMgL,
    costMinorYear:
      at.saltPriceMinorPerLb === null ? null : saltLbYear * at.saltPriceMinorPerLb + waterGalYear * (at.waterPriceMinorPerGal ?? 0),
    fault: faultOf(dose, at, leakageMgL, days),
  }
}

function faultOf(dose: GridDose, at: DoseSetting, leakageMgL: number, days: number): DoseFault | null {
  if (leakageMgL > at.mostLeakageMgL) return 'leaks'
  if (dose.asNaClLbFt3 < at.leastAsNaClLbFt3) return 'iron-stays'
  return days < 1 ? 'too-often' : null
}
