import type { TankFill } from '../tanks/fill-for-tank.ts'
import type { RebedKitInput } from './kit-types.ts'

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
export function decideGravel(input: Pick<RebedKitInput, 'gravelWanted' | 'figures'>, fill: TankFill): GravelDecision {
  const recorded = fill.gravelBasis === 'recorded'
  const presentLb = fill.gravelLb
  const usualLb = fill.gravelLb
  if (input.gravelWanted === false || (input.gravelWanted == null && fill.gravelBasis === 'table' && fill.gravelLb === 0)) {
    return { newLb: 0, takenOutLb: presentLb, presentLb, why: 'This firm fills this tank without gravel.', assumptions: [] }
  }
  if (input.gravelWanted === true) {
    const why = recorded && usualLb > 0 ? 'Renewed with the bed, as much as was recorded.' : 'Wanted; weight as usual for this tank.'
    return { newLb: usualLb, takenOutLb: presentLb, presentLb, why, assumptions: [] }
  }
  if (recorded) {
    const why =
      presentLb > 0 ? 'The tank had gravel: it comes out with the old bed and is renewed.' : 'The tank was recorded without gravel.'
    return { newLb: presentLb, takenOutLb: presentLb, presentLb, why, assumptions: [] }
  }
  const fromFt3 = input.figures?.gravelFromFt3 ?? GRAVEL_MATTERS_FROM_FT3
  const wanted = fill.resinFt3 >= fromFt3
  const since =
    fromFt3 === GRAVEL_MATTERS_FROM_FT3
      ? `since it matters from about ${fromFt3} ft³ of resin up (common practice)`
      : `since this firm brings it from ${fromFt3} ft³ of resin up (the firm’s own figure)`
  const rule = `Whether the tank has gravel is not recorded: ${wanted ? 'brought' : 'left out'}, ${since}.`
  return {
    newLb: wanted ? usualLb : 0,
    takenOutLb: wanted ? usualLb : 0,
    presentLb: wanted ? presentLb : 0,
    why: rule,
    assumptions: [rule],
  }
}
