import { type DoseFigures, type DoseSetting, doseFigures } from './dose-figures.ts'
import type { GridDose } from './dose-grid.ts'

export type DoseChoice = {
  /** Every dose compared, rising. */
  doses: DoseFigures[]
  /** Index of the one chosen. */
  best: number
  /** What made it the best: the yearly cost, or where the firm has set no price of salt, the salt used. `none`: no dose will do. */
  by: 'cost' | 'salt' | 'none'
}

/**
 * The dose of least yearly cost among those that leak little enough and last a day. Where none does, the one that leaks and regenerates
 * least: the largest. Of equal ones the smaller dose.
 */
export function chooseDose(grid: readonly GridDose[], at: DoseSetting): DoseChoice {
  const doses = new Array<DoseFigures>(grid.length)
  let best = -1
  let least = Number.POSITIVE_INFINITY
  for (let index = 0; index < grid.length; index += 1) {
    const figures = doseFigures(grid[index] as GridDose, at)
    doses[index] = figures
    const cost = figures.costMinorYear ?? figures.saltLbYear
    if (figures.fault === null && cost < least) {
      least = cost
      best = index
    }
  }
  if (best < 0) return { doses, best: grid.length - 1, by: 'none' }
  return { doses, best, by: at.saltPriceMinorPerLb === null ? 'salt' : 'cost' }
}
