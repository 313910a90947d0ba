import { formatHardnessGpg } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import type { DiagnosisSpeaking } from './diagnosis-words.ts'

/** How well each answer of a check goes with a number that was read, in the order of the answers, and the number in words. */
export type Graded = { weights: number[]; words: string }

/** A quarter missing is the published point of replacement (UFC 3-240-13FN §2-2.5.1.4); a tenth is within what settings and water vary. */
const CAPACITY_LOW_BELOW = 0.75
const CAPACITY_FULL_FROM = 0.9
/** A capacity is measured by a meter and a drop kit to about this share; common practice, no source. */
const CAPACITY_SD = 0.08

/** Soft is up to a drop of the kit, 1 gpg; two and more is hard. Between them it may be either. Common practice, no source. */
const SOFT_BELOW_GPG = 2
/** Drop kits count a grain a drop, so that a reading may be a drop off either way; common practice, no source. */
const DROP_KIT_SD_GPG = 0.7

/** Salt used against what the setting asks for; bags are counted, so to about this share. Common practice, no source. */
const SALT_NONE_BELOW = 0.15
const SALT_LESS_BELOW = 0.75
const SALT_MORE_FROM = 1.3
const SALT_SD = 0.12

/** Full, some missing, a quarter or more missing. */
export function gradeCapacity(share: number, { display, words }: DiagnosisSpeaking): Graded {
  const low = above(CAPACITY_LOW_BELOW, share, CAPACITY_SD)
  const full = above(share, CAPACITY_FULL_FROM, CAPACITY_SD)
  return { weights: [full, Math.max(0, 1 - low - full), low], words: words('measuredShare', { share: formatPercent(share, display) }) }
}

/** Both soft; outlet soft and tap hard; outlet hard. One of the two may be null. */
export function gradeOutlet(outletGpg: number | null, tapGpg: number | null, { display, words }: DiagnosisSpeaking): Graded {
  const soft = (gpg: number | null) => (gpg === null ? null : above(SOFT_BELOW_GPG, gpg, DROP_KIT_SD_GPG))
  const outlet = soft(outletGpg)
  const tap = soft(tapGpg)
  const value = (gpg: number) => formatHardnessGpg(gpg, display)
  const said = [
    outletGpg === null ? '' : words('outletRead', { value: value(outletGpg) }),
    tapGpg === null ? '' : words('tapRead', { value: value(tapGpg) }),
  ]
  return {
    weights: [
      (outlet ?? 1) * (tap ?? 1),
      (outlet ?? 1) * (tap === null ? 1 : 1 - tap),
      (outlet === null ? 1 : 1 - outlet) * (tap === null ? 1 : 1 - 0.5 * tap),
    ],
    words: said.filter(Boolean).join(', '),
  }
}

/** Not at all, less, as set, more. */
export function gradeSalt(share: number, { display, words }: DiagnosisSpeaking): Graded {
  const none = above(SALT_NONE_BELOW, share, SALT_SD)
  const upToLess = above(SALT_LESS_BELOW, share, SALT_SD)
  const more = above(share, SALT_MORE_FROM, SALT_SD)
  const less = Math.max(0, upToLess - none)
  return {
    weights: [none, less, Math.max(0, 1 - upToLess - more), more],
    words: words('shareOfSetting', { share: formatPercent(share, display) }),
  }
}

/** Chance that `higher` truly lies above `lower` where their difference is read with a normal error. */
function above(higher: number, lower: number, sd: number): number {
  return normalCumulative((higher - lower) / sd)
}

/** Standard normal distribution function, Abramowitz and Stegun 26.2.17; off by less than 7.5e-8. */
export function normalCumulative(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z))
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const tail = (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) * series
  return z >= 0 ? 1 - tail : tail
}
