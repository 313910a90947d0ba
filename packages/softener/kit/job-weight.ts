import type { ResinKindId } from '@almanac/records/resin-kind'
import { formatTankSize, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { showWhole } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import { checkTankSize, tankShell } from '../tanks/tank-geometry.ts'
import type { Speaking } from './speaking.ts'

export type JobWeightInput = Speaking & {
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
/** From more resin than this over stairs a third person shares the carrying, ft³; common practice, no source. */
const MUCH_OVER_STAIRS_FT3 = 2
/** From this diameter, and from this weight drained, a tank is emptied where it stands; below both two people may tip it. Common practice, no source. */
const TIP_BELOW_IN = 13
const TIP_MOST_LB = 150
/** From this diameter a tank is a commercial job (common practice, no source). */
export const COMMERCIAL_DIAMETER_IN = 21

/** Weight of the full tank and of the heaviest lift, and the crew it calls for. Pounds. Refuses impossible sizes. */
export function jobWeight(input: JobWeightInput): Result<JobWeight> {
  const { words, display } = input
  const wrong = checkTankSize(input.diameterIn, input.heightIn, input.words)
  if (wrong) return wrong
  if (!(input.resinFt3 > 0) || !(input.gravelLb >= 0)) return refuse(words('badWeights'))
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
    ...(input.tankLb == null ? [words('tankWeight')] : []),
    ...(input.valveLb == null ? [words('valveWeight', { weight: formatWeightLb(VALVE_LB, display) })] : []),
  ]
  return ok(
    { ...value, heaviestLiftLb: lift.weightLb, heaviestLift: lift.what },
    {
      assumptions,
      sources: [words('source/practice'), words('source/memory')],
    },
  )
}

/** Weight of an empty glass-fibre tank, lb: in proportion to its surface and, as walls grow with the diameter, to D/10. */
export function emptyTankLb(diameterIn: number, heightIn: number): number {
  const surfaceFt2 = (Math.PI * diameterIn * (heightIn + diameterIn / 2)) / 144
  return SHELL_LB_PER_FT2 * surfaceFt2 * (diameterIn / 10)
}

/** Weight of a tank that was drained and still holds its wet bed and gravel, lb. */
export function drainedTankLb(
  input: Pick<JobWeightInput, 'diameterIn' | 'heightIn' | 'resinFt3' | 'gravelLb' | 'resinKind' | 'tankLb'>,
): number {
  const resinLb = input.resinFt3 * RESIN_KINDS[input.resinKind ?? 'gel-8'].wetWeightLbFt3.value
  return (input.tankLb ?? emptyTankLb(input.diameterIn, input.heightIn)) + resinLb + input.gravelLb
}

/** Whether two people may tip a drained tank to empty it. */
export const mayTip = (diameterIn: number, drainedLb: number): boolean => diameterIn < TIP_BELOW_IN && drainedLb <= TIP_MOST_LB

/** The tip is a lift of its own, usually the heaviest; NIOSH's equation does not cover it. */
function heaviestLift(input: JobWeightInput, tankLb: number): { weightLb: number; what: string } {
  const drainedLb = drainedTankLb({ ...input, tankLb })
  if (mayTip(input.diameterIn, drainedLb)) return { weightLb: drainedLb, what: input.words('tippedTank') }
  const bagLb = input.heaviestBagLb ?? RESIN_KINDS[input.resinKind ?? 'gel-8'].wetWeightLbFt3.value * Math.min(1, input.resinFt3)
  return tankLb > bagLb ? { weightLb: tankLb, what: input.words('emptiedTank') } : { weightLb: bagLb, what: input.words('bagOfResin') }
}

function crewFor(input: JobWeightInput, liftLb: number): { crewSize: number; crewWhy: string } {
  const { diameterIn, heightIn, access, resinFt3, words, display } = input
  if (diameterIn >= COMMERCIAL_DIAMETER_IN) {
    const crewSize = liftLb > 100 ? 4 : 3
    const size = formatTankSize(diameterIn, heightIn, display)
    return { crewSize, crewWhy: words('crewCommercial', { size, count: showWhole(crewSize, display) }) }
  }
  if (access === 'stairs' && resinFt3 > MUCH_OVER_STAIRS_FT3)
    return { crewSize: 3, crewWhy: words('crewStairs', { volume: formatVolumeFt3(MUCH_OVER_STAIRS_FT3, display) }) }
  return { crewSize: 2, crewWhy: words(access === 'stairs' || access === 'tight' ? 'crewHard' : 'crewTwo') }
}
