import { formatFlowGpm } from '@almanac/units/format'
import { withUnit } from '@almanac/units/format-number'
import type { ValveCard } from '../firm/firm-figures.ts'
import { TUBE_OUTSIDE_DIAMETERS_IN, tubeOutsideDiameter } from '../tanks/distributor-tube.ts'
import type { Speaking } from './speaking.ts'
import { valveLabel } from './valve-texts.ts'

/**
 * Bore by outside diameter, in: ¾ and 1½ in pipe, schedule 40 (ASTM D1785: 1.050 less two walls of 0.113, 1.900 less two of 0.145); the 13/16 and 1½ in
 * outside tubes from memory, unverified.
 */
const BORES: readonly (readonly [outsideIn: number, boreIn: number])[] = [
  [13 / 16, 0.68],
  [1.05, 0.824],
  [1.5, 1.36],
  [1.9, 1.61],
]

/** Water faster than this in a tube wears and rattles, ft/s; common practice, no source. */
const FAST_WATER_FT_S = 8
/** How exactly the tube is cut, in: an eighth either way; from memory, unverified. */
export const TUBE_CUT_TOLERANCE_IN = 1 / 8

export type TubeChoice = {
  outsideDiameterIn: number
  basis: 'recorded' | 'valve' | 'flow' | 'usual'
  /** Why this one, as a sentence. */
  why: string
  /** Speed of the water at the flow given, ft/s; null where flow or bore is not known. */
  waterFtS: number | null
  warning: string | null
}

export type TubeQuestion = Speaking & {
  recordedOdIn?: number | null
  valve?: Pick<ValveCard, 'label' | 'tubeOdIn'> | null
  /** The flow the softener must carry, gpm. */
  flowGpm?: number | null
  diameterIn: number
}

/** Speed in a round tube, ft/s: 231 in³ a gallon through πd²/4, derived. Null for an outside diameter that is not listed. */
export function tubeSpeedFtS(flowGpm: number, outsideDiameterIn: number): number | null {
  const bore = BORES.find(([outside]) => Math.abs(outside - outsideDiameterIn) < 0.03)?.[1]
  if (bore === undefined || !(flowGpm >= 0 && Number.isFinite(flowGpm))) return null
  return (flowGpm * 231) / 60 / ((Math.PI * bore * bore) / 4) / 12
}

/** Outside diameter of the distributor tube: as recorded, else by the valve it seals in, else by the flow, else as usual for the tank. Never refuses. */
export function chooseTube({ recordedOdIn, valve, flowGpm, diameterIn, display, words }: TubeQuestion): TubeChoice {
  const speaking = { display, words }
  const flow = flowGpm != null && flowGpm > 0 && Number.isFinite(flowGpm) ? flowGpm : null
  const recorded = tubeOutsideDiameter(recordedOdIn, diameterIn)
  const byValve = tubeOutsideDiameter(valve?.tubeOdIn, diameterIn)
  if (!recorded.assumed) return judged(recorded.outsideDiameterIn, 'recorded', words('tubeRecorded'), flow, speaking)
  if (!byValve.assumed && valve)
    return judged(byValve.outsideDiameterIn, 'valve', words('tubeByValve', { valve: valveLabel(valve.label, words) }), flow, speaking)
  if (flow !== null) {
    const { domestic, commercial } = TUBE_OUTSIDE_DIAMETERS_IN
    const wide = (tubeSpeedFtS(flow, domestic) ?? 0) > FAST_WATER_FT_S
    const why = words('tubeByFlow', { flow: formatFlowGpm(flow, display), speed: speedText(FAST_WATER_FT_S, display) })
    return judged(wide ? commercial : domestic, 'flow', why, flow, speaking)
  }
  return judged(recorded.outsideDiameterIn, 'usual', words('tubeUsual'), null, speaking)
}

const speedText = (ftS: number, display: Speaking['display']) => withUnit(ftS, 0, 'ft/s', display)

function judged(
  outsideDiameterIn: number,
  basis: TubeChoice['basis'],
  why: string,
  flow: number | null,
  { display, words }: Speaking,
): TubeChoice {
  const waterFtS = flow === null ? null : tubeSpeedFtS(flow, outsideDiameterIn)
  const fast = flow !== null && waterFtS !== null && waterFtS > FAST_WATER_FT_S
  const warning = fast
    ? words('tubeFast', {
        flow: formatFlowGpm(flow, display),
        speed: speedText(waterFtS, display),
        most: speedText(FAST_WATER_FT_S, display),
      })
    : null
  return { outsideDiameterIn, basis, why, waterFtS, warning }
}
