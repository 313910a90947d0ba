import { formatPercent } from '@almanac/units/format-number'
import { CAUSES, type CauseId } from './causes.ts'
import type { DiagnosisSpeaking } from './diagnosis-words.ts'

/** What is known of the bed before any check: the forecast's chance that it has failed, or else its age. */
export type BedBefore = { chanceFailed?: number | null; ageYears?: number | null }
export type CausePrior = { chances: Record<CauseId, number>; basis: 'forecast' | 'age' | 'usual'; assumption: string }

/** However sure the forecast, something else may be at work; and no bed is beyond doubt. Our own choice. */
const WORN_SHARE = { least: 0.02, most: 0.85 } as const
/** A bed's life without a forecast, Weibull: half have failed by about 11½ years (common practice: 12 to 15 years on clean water, less with chlorine). */
const LIFE = { shape: 3, scaleYears: 13 } as const

/** The chance of each cause before any check; adds up to 1. A chance or an age that cannot be is passed over, and said so. */
export function causePrior(bed: BedBefore | null | undefined, { display, words }: DiagnosisSpeaking): CausePrior {
  const usual = Object.fromEntries(CAUSES.map((cause) => [cause.id, cause.share])) as Record<CauseId, number>
  const chance = bed?.chanceFailed
  if (chance != null && chance >= 0 && chance <= 1)
    return {
      chances: withWorn(usual, chance),
      basis: 'forecast',
      assumption: words('fromForecast', { chance: formatPercent(chance, display) }),
    }
  const age = bed?.ageYears
  if (age != null && age >= 0 && age <= 100) {
    const failed = 1 - Math.exp(-((age / LIFE.scaleYears) ** LIFE.shape))
    return {
      chances: withWorn(usual, failed),
      basis: 'age',
      assumption: words('fromAge', { years: Math.round(age), chance: formatPercent(failed, display) }),
    }
  }
  return {
    chances: usual,
    basis: 'usual',
    assumption: words('fromUsual'),
  }
}

function withWorn(usual: Record<CauseId, number>, chance: number): Record<CauseId, number> {
  const worn = Math.min(WORN_SHARE.most, Math.max(WORN_SHARE.least, chance))
  const rest = (1 - worn) / (1 - usual['worn-bed'])
  return Object.fromEntries(CAUSES.map(({ id }) => [id, id === 'worn-bed' ? worn : usual[id] * rest])) as Record<CauseId, number>
}
