import { quoteNumber } from '@almanac/units/format-number'
import type { Refusal } from '@almanac/units/result'
import { refuse } from '@almanac/units/result'
import type { Words } from '@almanac/words/words'

/**
 * A mineral tank as a vertical cylinder with two dished ends. Heights are inches above the floor the tank stands on; the nominal
 * height is from the floor to the rim of the opening, without the valve.
 *
 * The trade's rule of thumb is that a tank holds 0.92 of the plain cylinder of its nominal size. Here the dished ends are half
 * ellipsoids a quarter diameter deep (the common 2:1 head), and what is still missing to 0.92 is shared between the foot below and the
 * neck above, so that volume and levels agree with each other and with the rule. Both are assumptions: no maker's drawing is used.
 */
export type TankShell = {
  diameterIn: number
  heightIn: number
  areaFt2: number
  volumeFt3: number
  /** Depth of each dished end. */
  headDepthIn: number
  /** Lowest point inside. */
  bottomIn: number
  /** Highest point inside, under the neck. */
  crownIn: number
}

/** Share of the nominal cylinder that a dished tank holds; common practice, no source. */
const SHELL_VOLUME_FACTOR = 0.92
/** Head depth as a share of the diameter: the common 2:1 ellipsoidal head. */
const HEAD_DEPTH_RATIO = 0.25

/** Largest and smallest sizes the calculations accept, inches: outside them a size is more likely a slip than a tank. */
export const TANK_LIMITS = { minDiameterIn: 4, maxDiameterIn: 72, minHeightIn: 10, maxHeightIn: 144 } as const

/** Cross-section in ft² of a circle of nominal diameter: D²/183.35, derived from exact definitions. */
export function tankAreaFt2(diameterIn: number): number {
  return (Math.PI * diameterIn * diameterIn) / 4 / 144
}

/** Null when a tank of this size can be worked out, else the refusal that says what is wrong. */
export function checkTankSize(diameterIn: number, heightIn: number, words: Words<'kit'>): Refusal | null {
  const { minDiameterIn, maxDiameterIn, minHeightIn, maxHeightIn } = TANK_LIMITS
  if (!(diameterIn >= minDiameterIn && diameterIn <= maxDiameterIn)) {
    return refuse(words('badDiameter', { value: quoteNumber(diameterIn), least: `${minDiameterIn}`, most: `${maxDiameterIn}` }))
  }
  if (!(heightIn >= minHeightIn && heightIn <= maxHeightIn)) {
    return refuse(words('badHeight', { value: quoteNumber(heightIn), least: `${minHeightIn}`, most: `${maxHeightIn}` }))
  }
  if (heightIn < diameterIn) return refuse(words('widerThanHigh', { diameter: quoteNumber(diameterIn), height: quoteNumber(heightIn) }))
  return null
}

/** Whether a tank of this size can be worked out. */
export function canBeTank(diameterIn: number, heightIn: number): boolean {
  const { minDiameterIn, maxDiameterIn, minHeightIn, maxHeightIn } = TANK_LIMITS
  const within = diameterIn >= minDiameterIn && diameterIn <= maxDiameterIn && heightIn >= minHeightIn && heightIn <= maxHeightIn
  return within && heightIn >= diameterIn
}

/** The shell of a tank of nominal size; sizes must have passed `checkTankSize`. */
export function tankShell(diameterIn: number, heightIn: number): TankShell {
  const areaFt2 = tankAreaFt2(diameterIn)
  // A very squat tank cannot lose 8% to its foot and neck alone, so its heads are drawn flatter.
  const headDepthIn = Math.min(diameterIn * HEAD_DEPTH_RATIO, 1.5 * (1 - SHELL_VOLUME_FACTOR) * heightIn)
  const insideHeightIn = SHELL_VOLUME_FACTOR * heightIn + (2 / 3) * headDepthIn
  const bottomIn = (heightIn - insideHeightIn) / 2
  const volumeFt3 = (areaFt2 * SHELL_VOLUME_FACTOR * heightIn) / 12
  return { diameterIn, heightIn, areaFt2, volumeFt3, headDepthIn, bottomIn, crownIn: bottomIn + insideHeightIn }
}

/** Depth in inches that a volume takes in the straight part of a tank. */
export function depthInStraightIn(volumeFt3: number, areaFt2: number): number {
  return (volumeFt3 / areaFt2) * 12
}

/** Volume inside the shell below a height above the floor, ft³; the distributor tube's own volume is left out. */
export function volumeBelowFt3(shell: TankShell, heightIn: number): number {
  const { headDepthIn, bottomIn, crownIn, areaFt2, volumeFt3 } = shell
  if (heightIn <= bottomIn) return 0
  if (heightIn >= crownIn) return volumeFt3
  const headVolume = (2 * areaFt2 * headDepthIn) / 36
  if (heightIn < bottomIn + headDepthIn) return headFilledFt3(areaFt2, headDepthIn, heightIn - bottomIn)
  if (heightIn <= crownIn - headDepthIn) return headVolume + (areaFt2 * (heightIn - bottomIn - headDepthIn)) / 12
  return volumeFt3 - headFilledFt3(areaFt2, headDepthIn, crownIn - heightIn)
}

/** Volume of the end of a half ellipsoid of depth h up to depth z from its pole. */
function headFilledFt3(areaFt2: number, h: number, z: number): number {
  return (areaFt2 * (z * z * (3 * h - z))) / (3 * h * h) / 12
}

/** Height above the floor that a volume poured into the shell reaches, inches; a volume above the shell's gives the crown. */
export function levelOfVolumeIn(shell: TankShell, volumeFt3: number): number {
  if (!(volumeFt3 > 0)) return shell.bottomIn
  if (volumeFt3 >= shell.volumeFt3) return shell.crownIn
  const headVolume = (2 * shell.areaFt2 * shell.headDepthIn) / 36
  if (volumeFt3 >= headVolume && volumeFt3 <= shell.volumeFt3 - headVolume) {
    return shell.bottomIn + shell.headDepthIn + ((volumeFt3 - headVolume) / shell.areaFt2) * 12
  }
  let low = volumeFt3 < headVolume ? shell.bottomIn : shell.crownIn - shell.headDepthIn
  let high = low + shell.headDepthIn
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2
    if (volumeBelowFt3(shell, middle) < volumeFt3) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Half the inside width at a height above the floor, inches; 0 outside the shell. */
export function halfWidthAtIn(shell: TankShell, heightIn: number): number {
  const { headDepthIn: h, bottomIn, crownIn, diameterIn } = shell
  if (heightIn <= bottomIn || heightIn >= crownIn) return 0
  const intoHead = Math.max(bottomIn + h - heightIn, heightIn - (crownIn - h), 0)
  return (diameterIn / 2) * Math.sqrt(Math.max(0, 1 - (intoHead / h) ** 2))
}
