import { quoteNumber } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { COMMON_PRACTICE, EXACT, type Sourced } from '@almanac/units/sourced'
import type { CardSpeaking } from '../setting/card-types.ts'

/** gpg added for each mg/L of metal, as an allowance for fouling; a firm may set its own (trade range for iron: 2 to 5). */
export type MetalAllowance = { ironGpgPerMgL: number; manganeseGpgPerMgL: number }

export const IRON_ALLOWANCE: Sourced = { value: 4, unit: 'gpg per mg/L', basis: 'common practice', source: COMMON_PRACTICE }
export const MANGANESE_ALLOWANCE: Sourced = { value: 2, unit: 'gpg per mg/L', basis: 'common practice', source: COMMON_PRACTICE }
export const USUAL_ALLOWANCE: MetalAllowance = { ironGpgPerMgL: IRON_ALLOWANCE.value, manganeseGpgPerMgL: MANGANESE_ALLOWANCE.value }

/** Up to here a softener copes with iron, at a cost in life, mg/L; common practice, no source. */
export const MOST_IRON_MG_L = 2

export type CompensatedHardnessInput = {
  hardnessGpg: number | null
  ironMgL?: number | null
  manganeseMgL?: number | null
  allowance?: MetalAllowance
}

export type CompensatedHardness = { hardnessGpg: number; compensatedGpg: number; ironGpg: number; manganeseGpg: number; warnings: string[] }

/** Hardness to set the softener for, gpg: H + a·Fe + b·Mn. Iron or manganese not measured count as none, and that is said. */
export function compensatedHardness(
  input: CompensatedHardnessInput,
  { card, why }: Pick<CardSpeaking, 'card' | 'why'>,
): Result<CompensatedHardness> {
  const { hardnessGpg, ironMgL, manganeseMgL } = input
  if (hardnessGpg === null) return refuse(card('noHardness'))
  if (!(hardnessGpg >= 0 && hardnessGpg <= 250)) return refuse(card('badHardness', { value: quoteNumber(hardnessGpg) }))
  if (!usable(ironMgL) || !usable(manganeseMgL)) return refuse(card('badMetals'))
  const allowance = input.allowance ?? USUAL_ALLOWANCE
  const ironGpg = (ironMgL ?? 0) * allowance.ironGpgPerMgL
  const manganeseGpg = (manganeseMgL ?? 0) * allowance.manganeseGpgPerMgL
  const warnings = (ironMgL ?? 0) > MOST_IRON_MG_L ? [card('warn/iron', { most: String(MOST_IRON_MG_L) })] : []
  return ok(
    { hardnessGpg, compensatedGpg: hardnessGpg + ironGpg + manganeseGpg, ironGpg, manganeseGpg, warnings },
    {
      assumptions: [...(ironMgL == null ? [why('assumed/iron')] : []), ...(manganeseMgL == null ? [why('assumed/manganese')] : [])],
      missing: [...(ironMgL == null ? [why('missing/iron')] : []), ...(manganeseMgL == null ? [why('missing/manganese')] : [])],
      sources: [EXACT, COMMON_PRACTICE],
    },
  )
}

function usable(valueMgL: number | null | undefined): boolean {
  return valueMgL == null || (valueMgL >= 0 && valueMgL <= 100)
}
