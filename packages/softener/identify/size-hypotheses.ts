import { USUAL_FILL_SHARE } from '../tanks/fill-for-tank.ts'
import { tankShell } from '../tanks/tank-geometry.ts'
import type { TankSize } from '../tanks/tank-sizes.ts'
import { JACKET_SHARE } from './clue-errors.ts'
import type { SizeHypothesis } from './clue-types.ts'

/** Share of tanks whose size stands in no table; from memory, unverified. */
const UNLISTED_SHARE = 0.08
/** Households have 1 to 2 ft³ most often; how many as large or as small one meets falls off on both sides. From memory, unverified. */
const USUAL_RESIN_FT3 = 1.25
const RESIN_LOG_SD = 0.8

/** Sizes looked through where no row fits, in: every half inch across and every inch of height. */
const DIAMETERS = { from: 5, to: 42, step: 0.5 }
const HEIGHTS = { from: 17, to: 84, step: 1 }
/** An unlisted tank is filled like listed ones, which vary by so much about the mean share. */
const FILL_SPREAD = 0.12

/** How often a tank with so much resin is met, not normed. */
function howOften(resinFt3: number): number {
  return Math.exp(-0.5 * (Math.log(resinFt3 / USUAL_RESIN_FT3) / RESIN_LOG_SD) ** 2)
}

/** Every size that could be, with its chance before anything is measured: the table's rows, and a grid of what it does not list. */
export function sizeHypotheses(table: readonly TankSize[]): readonly SizeHypothesis[] {
  const known = made.get(table)
  if (known) return known
  const sizes = makeHypotheses(table)
  made.set(table, sizes)
  return sizes
}

/** Made once for each table: they are thousands, and the same for every clue. */
const made = new WeakMap<readonly TankSize[], readonly SizeHypothesis[]>()

function makeHypotheses(table: readonly TankSize[]): SizeHypothesis[] {
  const listed = table.map((tank, at) => ({
    ...{ diameterIn: tank.diameterIn, heightIn: tank.heightIn, listed: at, openingsIn: tank.openingsIn },
    resinMinFt3: Math.min(tank.resinFt3.min, tank.resinFt3.usual),
    resinMaxFt3: Math.max(tank.resinFt3.max, tank.resinFt3.usual),
    prior: howOften(tank.resinFt3.usual),
  }))
  const unlisted = unlistedSizes(table)
  const normed = [
    ...shareOut(listed, unlisted.length === 0 ? 1 : 1 - UNLISTED_SHARE),
    ...shareOut(unlisted, listed.length === 0 ? 1 : UNLISTED_SHARE),
  ]
  return normed.flatMap((one) => [
    { ...one, jacket: false, prior: one.prior * (1 - JACKET_SHARE) },
    { ...one, jacket: true, prior: one.prior * JACKET_SHARE },
  ])
}

type Size = Omit<SizeHypothesis, 'jacket'>

function unlistedSizes(table: readonly TankSize[]): Size[] {
  const sizes: Size[] = []
  for (let diameterIn = DIAMETERS.from; diameterIn <= DIAMETERS.to; diameterIn += DIAMETERS.step) {
    for (let heightIn = HEIGHTS.from; heightIn <= HEIGHTS.to; heightIn += HEIGHTS.step) {
      if (heightIn < 1.5 * diameterIn || takenByTable(diameterIn, heightIn, table)) continue
      const resinFt3 = USUAL_FILL_SHARE * tankShell(diameterIn, heightIn).volumeFt3
      sizes.push({
        ...{ diameterIn, heightIn, listed: -1, openingsIn: [2.5, 4], prior: howOften(resinFt3) },
        resinMinFt3: resinFt3 * (1 - FILL_SPREAD),
        resinMaxFt3: resinFt3 * (1 + FILL_SPREAD),
      })
    }
  }
  return sizes
}

/** Within half an inch across and an inch of height a size is the listed one, as everywhere else. */
function takenByTable(diameterIn: number, heightIn: number, table: readonly TankSize[]): boolean {
  return table.some((tank) => Math.abs(tank.diameterIn - diameterIn) <= 0.5 && Math.abs(tank.heightIn - heightIn) <= 1)
}

function shareOut(sizes: Size[], share: number): Size[] {
  const total = sizes.reduce((sum, one) => sum + one.prior, 0)
  return sizes.map((one) => ({ ...one, prior: (one.prior / total) * share }))
}
