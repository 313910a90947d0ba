import { formatCutLengthIn, formatHardnessGpg, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { showFixed } from '@almanac/units/format-number'
import { USUAL_FIGURES } from '../firm/usual-figures.ts'
import { COMMERCIAL_DIAMETER_IN, drainedTankLb, mayTip } from '../kit/job-weight.ts'
import { nioshLifting } from '../kit/niosh-lifting.ts'
import { sanitiserText } from '../kit/sanitiser.ts'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import { COMMERCIAL_FROM_FT3 } from '../site/commercial.ts'
import { hasHub } from '../tanks/distributor-tube.ts'
import { fillForTank } from '../tanks/fill-for-tank.ts'
import { twinName } from '../tanks/twin-name.ts'
import type { ProcedureContext } from './procedure-types.ts'
import type { ProcedureWords } from './procedure-words.ts'
import type { StepFacts } from './step-rules.ts'

/** Above this the house wants a pressure regulator, psi (common plumbing code limit). */
export const HIGH_PRESSURE_PSI = 80
/** Hands on a bag that lies on the floor, in. */
const FLOOR_IN = 6
/** Height of the neck taken where the tank's is not known, in. */
const TYPICAL_NECK_IN = 54
/** Taken for the time estimates when neither tank nor volume is known, ft³. */
const TYPICAL_RESIN_FT3 = 1.5

/** What the steps depend on, from what is recorded; never refuses, since a technician needs steps whatever is known. */
export function procedureFacts(context: ProcedureContext, words: ProcedureWords): { facts: StepFacts; assumptions: string[] } {
  const { diameterIn, heightIn, nominalGrains, resinVolumeFt3: recordedFt3, gravelLb: recordedLb, display } = context
  const say = words.steps
  const fill = fillForTank(
    { diameterIn, heightIn, nominalGrains, resinFt3: recordedFt3, gravelLb: recordedLb },
    { words: words.kit, display },
    context.figures?.tanks,
  )
  const resinFt3 = fill.ok ? fill.value.resinFt3 : TYPICAL_RESIN_FT3
  const volume = formatVolumeFt3(resinFt3, display)
  const gravelLb = fill.ok ? fill.value.gravelLb : null
  const cut = context.newTubeLengthIn
  const liftingIndex = bagLift(resinFt3, heightIn ?? TYPICAL_NECK_IN)
  const drainedLb =
    diameterIn == null || heightIn == null ? null : drainedTankLb({ ...context, diameterIn, heightIn, resinFt3, gravelLb: gravelLb ?? 0 })
  const bleach = sanitiserText(resinFt3, null, { display, words: words.kit })
  const facts: StepFacts = {
    ...context,
    resinFt3,
    gravel: context.gravelLb == null ? null : context.gravelLb > 0,
    commercial: (context.diameterIn ?? 0) >= COMMERCIAL_DIAMETER_IN || resinFt3 >= COMMERCIAL_FROM_FT3,
    tips: diameterIn == null || drainedLb === null ? null : mayTip(diameterIn, drainedLb),
    hub: hasHub(diameterIn ?? 0),
    highPressure: (context.pressurePsi ?? 0) > HIGH_PRESSURE_PSI,
    liftingIndex,
    doses: {
      cutLength: cut == null ? null : formatCutLengthIn(cut, display),
      gravel: gravelLb ? formatWeightLb(gravelLb, display) : null,
      resin: fill.ok ? volume : null,
      bleach: fill.ok ? bleach : null,
    },
    named: {
      cutLength: cut == null ? say('cut-tube/length-unknown') : say('cut-tube/length', { length: formatCutLengthIn(cut, display) }),
      resin: say(fill.ok && fill.value.resinBasis === 'recorded' ? 'pour-resin/amount' : 'pour-resin/amount-assumed', { volume }),
      gravel:
        gravelLb === null ? say('pour-gravel/amount-unknown') : say('pour-gravel/amount', { weight: formatWeightLb(gravelLb, display) }),
      limit: formatHardnessGpg((context.figures ?? USUAL_FIGURES).outletLimitGpg, display),
      bag: formatWeightLb(RESIN_KINDS[context.resinKind ?? 'gel-8'].wetWeightLbFt3.value * Math.min(1, resinFt3), display),
      tank: context.twin ? twinName(context.twin, { words: words.kit, display }) : '',
      drained: formatWeightLb(drainedLb ?? 0, display),
      bleach,
      index: liftingIndex === null ? '' : showFixed(liftingIndex, 1, display),
    },
  }
  const unknown = fill.ok ? [] : [say('assumed/times', { reason: fill.reason, volume })]
  return { facts, assumptions: [...(fill.ok ? fill.assumptions : unknown), ...openQuestions(context, words)] }
}

/**
 * The lifting index of a bag taken from the floor and poured in at the neck, by the NIOSH equation: the worse of its beginning and of its end, where the bag
 * is held still too. Null where the equation gives none, as with a neck above 70 in.
 */
function bagLift(resinFt3: number, neckIn: number): number | null {
  const weightLb = 51 * Math.min(1, resinFt3)
  const lifts = [FLOOR_IN, neckIn].map((verticalIn) =>
    nioshLifting({ weightLb, horizontalIn: 14, verticalIn, travelIn: Math.max(0, neckIn - FLOOR_IN), coupling: 'poor' }),
  )
  const indices = lifts.map((lift) => (lift.ok ? lift.value.index : null))
  return indices.some((one) => one === null) ? null : Math.max(...indices.map(Number))
}

function openQuestions(context: ProcedureContext, { steps }: ProcedureWords): string[] {
  const notes: string[] = []
  if (context.hasBypass == null) notes.push(steps('assumed/bypass'))
  if (context.metalPipe == null) notes.push(steps('assumed/pipe'))
  if (context.valveNeedsPower == null) notes.push(steps('assumed/power'))
  if (context.pressurePsi == null) notes.push(steps('assumed/pressure'))
  return notes
}
