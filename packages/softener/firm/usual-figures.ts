import { eachResinKind } from '@almanac/records/resin-kind'
import { GRAVEL_MATTERS_FROM_FT3 } from '../kit/decide-gravel.ts'
import { TANK_SIZES } from '../tanks/tank-sizes.ts'
import { usualCurve } from '../water/capacity-curves.ts'
import { USUAL_ALLOWANCE } from '../water/compensated-hardness.ts'
import type { FirmFigures } from './firm-figures.ts'
import { USUAL_VALVES } from './usual-valves.ts'

/** Room to expand that a softener's bed should have, as a share of its settled depth; common practice, no source. */
export const WANTED_EXPANSION = 0.5
/** Backwash set in houses, 4 to 5 gpm/ft² (common practice, no source), up to the 8 of public works (Ten States Standards §4.4.2). */
export const BACKWASH_GPM_FT2 = { min: 4, usual: 5, max: 8 } as const
/** One day's use is kept in hand; common practice, no source. */
export const RESERVE_DAYS = 1

/** Below this at the valve outlet little bypasses, gpg; common practice, no source. */
const OUTLET_LIMIT_GPG = 1

/** What holds where a firm set nothing of its own. */
export const USUAL_FIGURES: FirmFigures = {
  tanks: TANK_SIZES,
  valves: USUAL_VALVES,
  bagSizes: null,
  curves: eachResinKind(usualCurve),
  allowance: USUAL_ALLOWANCE,
  gravelFromFt3: GRAVEL_MATTERS_FROM_FT3,
  outletLimitGpg: OUTLET_LIMIT_GPG,
  backwash: { wantedExpansion: WANTED_EXPANSION, gpmFt2: BACKWASH_GPM_FT2 },
  reserve: { kind: 'days', days: RESERVE_DAYS },
  saltPriceMinorPerLb: null,
  waterPriceMinorPerGal: null,
}
