import type { AmountSaid } from '@almanac/units/amount-said'
import { impossible, type Judgement, odd, USUAL } from '@almanac/units/judge-amount'
import { convertLength, type LengthUnit } from '@almanac/units/length'
import { convertMass, type MassUnit } from '@almanac/units/mass'
import { convertVolume, type VolumeUnit } from '@almanac/units/volume'

/** What a tank holds and how high it is, without its valve; `words` name it in a sentence: "10 × 54 in". */
export type TankRoom = { words: string; volumeFt3: number; heightIn: number }

/**
 * `onSite`: the crew stands before the tank, and the record of the tank may be what is wrong. What the recorded tank cannot hold is then asked back,
 * unless no slip in its size explains it.
 */
export type InTank = { onSite?: boolean }

/** Resin fills a tank to about 0.61 of it, listed tanks from 0.56 to 0.68; beyond these a fill is unusual. Common practice, no source. */
const USUAL_FILL = { least: 0.35, most: 0.75 }
/** A tank of the next sizes up holds at most so many times as much: more is no slip of the tank's size. Common practice, no source. */
const NEXT_SIZES = 2.5
/** A cut tube ends about at the rim: so far above or below it is usual, and so far above it cannot go under a valve. Inches; common practice, no source. */
const TUBE = { above: 1, below: 6, impossible: 4 }
/** Usual gravel takes at most 0.115 of a listed tank; gravel weighs about 100 lb/ft³. Common practice, no source. */
const GRAVEL = { usualShare: 0.15, mostShare: 0.5, lbFt3: 100 }

/** Whether an amount of resin or gravel, or a tube, goes into this tank and is usual there. `value` is in `unit`. */
export function judgeInTank(kind: string, value: number, unit: string, room: TankRoom, { onSite = false }: InTank = {}): Judgement {
  if (kind === 'resin') return judgeResin(convertVolume(value, unit as VolumeUnit, 'ft3'), room, onSite)
  if (kind === 'gravel') return judgeGravel(convertMass(value, unit as MassUnit, 'lb'), room, onSite)
  if (kind === 'tube') return judgeTube(convertLength(value, unit as LengthUnit, 'in'), room, onSite)
  return USUAL
}

function cannot(said: AmountSaid, onSite: boolean): Judgement {
  return onSite ? odd({ ...said, after: 'otherTank' }) : impossible({ ...said, after: 'checkTank' })
}

function judgeResin(resinFt3: number, { words: tank, volumeFt3 }: TankRoom, onSite: boolean): Judgement {
  const share = resinFt3 / volumeFt3
  const texts = { tank }
  if (share > 0.95) return cannot({ key: 'resinTooMuch', texts }, onSite && share <= NEXT_SIZES)
  if (share > USUAL_FILL.most) return odd({ key: 'resinMuch', texts })
  return share < USUAL_FILL.least ? odd({ key: 'resinLittle', texts }) : USUAL
}

function judgeGravel(gravelLb: number, { words: tank, volumeFt3 }: TankRoom, onSite: boolean): Judgement {
  const share = gravelLb / GRAVEL.lbFt3 / volumeFt3
  const texts = { tank }
  if (share > GRAVEL.mostShare) return cannot({ key: 'gravelTooMuch', texts }, onSite && share <= GRAVEL.mostShare * NEXT_SIZES)
  return share > GRAVEL.usualShare ? odd({ key: 'gravelMuch', texts }) : USUAL
}

function judgeTube(tubeIn: number, { words: tank, heightIn }: TankRoom, onSite: boolean): Judgement {
  const texts = { tank }
  if (tubeIn > heightIn + TUBE.impossible) return cannot({ key: 'tubeTooLong', texts }, onSite)
  if (tubeIn > heightIn + TUBE.above) return odd({ key: 'tubeLong', texts })
  return tubeIn < heightIn - TUBE.below ? odd({ key: 'tubeShort', texts }) : USUAL
}
