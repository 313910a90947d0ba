import type { ResinKindId } from '@almanac/records/resin-kind'
import { ok, type Result, refuse } from '@almanac/units/result'
import { COMMON_PRACTICE, FROM_MEMORY } from '@almanac/units/sourced'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import { checkTankSize, tankShell } from '../tanks/tank-geometry.ts'

export type JobWeightInput = {
  diameterIn: number
  heightIn: number
  resinFt3: number
  gravelLb: number
  resinKind?: ResinKindId | null
  valveLb?: number | null
  tankLb?: number | null
  /** Heaviest single bag or container to carry; a whole 1 ft³ bag where not given. */
  heaviestBagLb?: number | null
  access?: SiteAccess | null
}

/** What makes carrying harder than across a level floor. */
export type SiteAccess = 'level' | 'stairs' | 'tight'

export type JobWeight = {
  resinLb: number
  gravelLb: number
  tankLb: number
  valveLb: number
  waterLb: number
  fullTankLb: number
  heaviestLiftLb: number
  heaviestLift: string
  crewSize: number
  crewWhy: string
}

/** Water, lb per ft³ at room temperature: 62.3 (from density 998 kg/m³). */
const WATER_LB_FT3 = 62.3
/** Share of a full 10 × 54 tank's own weight, lb per ft² of glass-fibre shell; scaled so that 10 × 54 weighs 21 lb (from memory). */
const SHELL_LB_PER_FT2 = 1.67
/** A domestic control valve, lb (from memory). */
const VALVE_LB = 8
/** Share of a settled bed and of gravel that is water between the grains and inside the beads' drained weight already (0.38 and 0.4 voids). */
const BED_VOIDS = 0.38
const GRAVEL_VOIDS = 0.4
/** From this diameter a tank is a commercial job (common practice, no source). */
export const COMMERCIAL_DIAMETER_IN = 21

/** Weight of the full tank and of the heaviest lift, and the crew it calls for. Pounds. Refuses impossible sizes. */
export function jobWeight(input: JobWeightInput): Result<JobWeight> {
  const wrong = checkTankSize(input.diameterIn, input.heightIn)
  if (wrong) return wrong
  if (!(input.resinFt3 > 0) || !(input.gravelLb >= 0))
    return refuse('The resin volume or the gravel weight is not a usable number; check both.')
  const shell = tankShell(input.diameterIn, input.heightIn)
  const resinLb = input.resinFt3 * RESIN_KINDS[input.resinKind ?? 'gel-8'].wetWeightLbFt3.value
  const tankLb = input.tankLb ?? emptyTankLb(input.diameterIn, input.heightIn)
  const valveLb = input.valveLb ?? VALVE_LB
  const gravelFt3 = input.gravelLb / GRAVEL_BULK_LB_FT3
  const freeFt3 = Math.max(0, shell.volumeFt3 - input.resinFt3 - gravelFt3)
  const waterFt3 = freeFt3 + BED_VOIDS * input.resinFt3 + GRAVEL_VOIDS * gravelFt3
  const waterLb = WATER_LB_FT3 * waterFt3
  const fullTankLb = resinLb + input.gravelLb + tankLb + valveLb + waterLb
  const lift = heaviestLift(input, tankLb)
  const crew = crewFor(input, lift.weightLb)
  const value = { resinLb, gravelLb: input.gravelLb, tankLb, valveLb, waterLb, fullTankLb, ...crew }
  const assumptions = [
    ...(input.tankLb == null ? ['Weight of the empty tank estimated from its size (from memory).'] : []),
    ...(input.valveLb == null ? [`Valve taken as ${VALVE_LB} lb (from memory).`] : []),
  ]
  return ok({ ...value, heaviestLiftLb: lift.weightLb, heaviestLift: lift.what }, { assumptions, sources: [COMMON_PRACTICE, FROM_MEMORY] })
}

/** Weight of an empty glass-fibre tank, lb: in proportion to its surface and, as walls grow with the diameter, to D/10. */
export function emptyTankLb(diameterIn: number, heightIn: number): number {
  const surfaceFt2 = (Math.PI * diameterIn * (heightIn + diameterIn / 2)) / 144
  return SHELL_LB_PER_FT2 * surfaceFt2 * (diameterIn / 10)
}

function heaviestLift(input: JobWeightInput, tankLb: number): { weightLb: number; what: string } {
  const bagLb = input.heaviestBagLb ?? RESIN_KINDS[input.resinKind ?? 'gel-8'].wetWeightLbFt3.value * Math.min(1, input.resinFt3)
  return tankLb > bagLb ? { weightLb: tankLb, what: 'the emptied tank' } : { weightLb: bagLb, what: 'a bag of resin' }
}

function crewFor(input: JobWeightInput, liftLb: number): { crewSize: number; crewWhy: string } {
  if (input.diameterIn >= COMMERCIAL_DIAMETER_IN) {
    const crewSize = liftLb > 100 ? 4 : 3
    return { crewSize, crewWhy: `A ${input.diameterIn} in tank is commercial work: ${crewSize} people (common practice).` }
  }
  if (input.access === 'stairs' && input.resinFt3 > 2)
    return { crewSize: 3, crewWhy: 'More than 2 ft³ over stairs: three people share the carrying (common practice).' }
  if (input.access === 'stairs' || input.access === 'tight')
    return { crewSize: 2, crewWhy: 'Two people for a rebed; nobody carries alone where access is hard (common practice).' }
  return { crewSize: 2, crewWhy: 'Two people for a rebed: the full tank is never tipped by one (common practice).' }
}
