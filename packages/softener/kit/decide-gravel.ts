import { formatVolumeFt3 } from '@almanac/units/format'
import type { TankFill } from '../tanks/fill-for-tank.ts'
import type { RebedKitInput } from './kit-types.ts'
import type { Speaking } from './speaking.ts'

/** Gravel matters from about this much resin up and little below; common practice, no source. */
export const GRAVEL_MATTERS_FROM_FT3 = 1.5

export type GravelDecision = {
  /** New gravel to bring, lb. */
  newLb: number
  /** Gravel that comes out with the old bed, lb. */
  takenOutLb: number
  /** Gravel in the tank as it stands, for its weight, lb. */
  presentLb: number
  why: string
  assumptions: string[]
}

/** Whether to bring gravel: what the firm wants, else as the tank was, else by the rule of thumb. */
export function decideGravel(input: Pick<RebedKitInput, 'gravelWanted' | 'figures'> & Speaking, fill: TankFill): GravelDecision {
  const { words, display } = input
  const recorded = fill.gravelBasis === 'recorded'
  const presentLb = fill.gravelLb
  const usualLb = fill.gravelLb
  if (input.gravelWanted === false || (input.gravelWanted == null && fill.gravelBasis === 'table' && fill.gravelLb === 0)) {
    return { newLb: 0, takenOutLb: presentLb, presentLb, why: words('noGravel'), assumptions: [] }
  }
  if (input.gravelWanted === true) {
    const why = words(recorded && usualLb > 0 ? 'gravelAsRecorded' : 'gravelAsUsual')
    return { newLb: usualLb, takenOutLb: presentLb, presentLb, why, assumptions: [] }
  }
  if (recorded) {
    const why = words(presentLb > 0 ? 'gravelRenewed' : 'gravelNone')
    return { newLb: presentLb, takenOutLb: presentLb, presentLb, why, assumptions: [] }
  }
  const fromFt3 = input.figures?.gravelFromFt3 ?? GRAVEL_MATTERS_FROM_FT3
  const wanted = fill.resinFt3 >= fromFt3
  const volume = formatVolumeFt3(fromFt3, display)
  const since = words(fromFt3 === GRAVEL_MATTERS_FROM_FT3 ? 'sinceUsual' : 'sinceFirm', { volume })
  const rule = words(wanted ? 'gravelBrought' : 'gravelLeftOut', { since })
  return {
    newLb: wanted ? usualLb : 0,
    takenOutLb: wanted ? usualLb : 0,
    presentLb: wanted ? presentLb : 0,
    why: rule,
    assumptions: [rule],
  }
}
