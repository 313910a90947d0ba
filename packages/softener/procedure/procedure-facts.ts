import { formatCutLengthIn, formatHardnessGpg, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { USUAL_FIGURES } from '../firm/usual-figures.ts'
import { COMMERCIAL_DIAMETER_IN } from '../kit/job-weight.ts'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import { fillForTank } from '../tanks/fill-for-tank.ts'
import type { ProcedureContext } from './procedure-types.ts'
import type { Facts } from './step-rules.ts'

/** Above this the house wants a pressure regulator, psi (common plumbing code limit). */
export const HIGH_PRESSURE_PSI = 80
/** Taken for the time estimates when neither tank nor volume is known, ft³. */
const TYPICAL_RESIN_FT3 = 1.5

/** What the steps depend on, from what is recorded; never refuses, since a technician needs steps whatever is known. */
export function procedureFacts(context: ProcedureContext): { facts: Facts; assumptions: string[] } {
  const { diameterIn, heightIn, nominalGrains, resinVolumeFt3: recordedFt3, gravelLb: recordedLb } = context
  const fill = fillForTank({ diameterIn, heightIn, nominalGrains, resinFt3: recordedFt3, gravelLb: recordedLb }, context.figures?.tanks)
  const resinFt3 = fill.ok ? fill.value.resinFt3 : TYPICAL_RESIN_FT3
  const known = fill.ok && fill.value.resinBasis === 'recorded'
  const gravel = context.gravelLb == null ? null : context.gravelLb > 0
  const gravelLb = fill.ok ? fill.value.gravelLb : null
  const cut = context.newTubeLengthIn
  const kind = RESIN_KINDS[context.resinKind ?? 'gel-8']
  const { display } = context
  const facts: Facts = {
    ...context,
    resinFt3,
    gravel,
    commercial: (context.diameterIn ?? 0) >= COMMERCIAL_DIAMETER_IN || resinFt3 >= 6,
    highPressure: (context.pressurePsi ?? 0) > HIGH_PRESSURE_PSI,
    cutLength: cut == null ? 'the kit has no length: the old tube decides' : `the kit says ${formatCutLengthIn(cut, display)}`,
    resinText: known
      ? `${formatVolumeFt3(resinFt3, display)} of resin`
      : `the resin of the kit (${formatVolumeFt3(resinFt3, display)} assumed)`,
    gravelText: gravelLb === null ? 'the gravel of the kit' : `${formatWeightLb(gravelLb, display)} of gravel`,
    outletLimit: formatHardnessGpg((context.figures ?? USUAL_FIGURES).outletLimitGpg, display),
    bagLift: formatWeightLb(kind.wetWeightLbFt3.value * Math.min(1, resinFt3), display),
  }
  const unknown = fill.ok ? [] : [`${fill.reason} Times are for ${TYPICAL_RESIN_FT3} ft³.`]
  return { facts, assumptions: [...(fill.ok ? fill.assumptions : unknown), ...openQuestions(context)] }
}

function openQuestions(context: ProcedureContext): string[] {
  const notes: string[] = []
  if (context.hasBypass == null) notes.push('Whether there is a bypass is not recorded: the steps expect one.')
  if (context.metalPipe == null) notes.push('Pipe material is not recorded: the bonding jumper is kept in.')
  if (context.valveNeedsPower == null) notes.push('Whether the valve needs power is not recorded: the steps expect that it does.')
  if (context.pressurePsi == null) notes.push('Pressure is not recorded: it is asked for.')
  return notes
}
