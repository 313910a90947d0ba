import type { ResinKindId } from '@almanac/records/resin-kind'
import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import type { FirmFigures } from '../firm/firm-figures.ts'
import type { CardSpeaking } from '../setting/card-types.ts'
import { capacityKgrFt3 } from '../water/capacity.ts'
import { compensatedHardness } from '../water/compensated-hardness.ts'

/** Salt taken where no dose is given, lb/ft³; common practice, no source. */
export const USUAL_SALT_LB_FT3 = 8
/** Water of one regeneration, gal per ft³ of resin: slow rinse 7.5–22.5 and fast rinse 35–100 (UFC 3-240-13FN; Davis 2010), backwash and refill on top; from memory. */
export const REGENERATION_GAL_FT3 = 65
/** Indoor use of a person a day, gal: trade sizing rules use 60 to 80; common practice, no source. */
export const GALLONS_PER_PERSON_DAY = 60
/** Indoor use of a household a day, gal (Residential End Uses of Water, 2016). */
export const GALLONS_PER_HOUSEHOLD_DAY = 138

export type RunningInput = {
  hardnessGpg: number | null
  ironMgL?: number | null
  manganeseMgL?: number | null
  gallonsPerDay: number
  saltLbFt3?: number | null
  figures: Pick<FirmFigures, 'allowance' | 'curves'>
  speaking: Pick<CardSpeaking, 'card' | 'why'>
}

export type Running = { saltLb: number; waterGal: number }

/**
 * Salt and regeneration water of a year with one resin: the hardness of a year's water over the capacity a pound of salt gives at the dose. Loss of
 * capacity with age is left out, since it is the same for all resins. Refuses without a hardness.
 */
export function yearlyRunning(kind: ResinKindId, input: RunningInput): Result<Running> {
  const { gallonsPerDay } = input
  if (!(gallonsPerDay > 0 && gallonsPerDay < 1e6)) return refuse('The water use must be above zero gallons a day; check the entry.')
  const hardness = compensatedHardness({ ...input, allowance: input.figures.allowance }, input.speaking)
  if (!hardness.ok) return hardness
  const given = input.saltLbFt3 != null && input.saltLbFt3 > 0 && input.saltLbFt3 <= 40
  const saltLbFt3 = given ? (input.saltLbFt3 ?? USUAL_SALT_LB_FT3) : USUAL_SALT_LB_FT3
  const kgrFt3 = capacityKgrFt3(kind, saltLbFt3, 'NaCl', input.figures.curves[kind])
  const regenerationsFt3 = (gallonsPerDay * DAYS_PER_YEAR * hardness.value.compensatedGpg) / (kgrFt3 * 1000)
  const value = { saltLb: regenerationsFt3 * saltLbFt3, waterGal: regenerationsFt3 * REGENERATION_GAL_FT3 }
  const assumptions = [
    ...hardness.assumptions,
    ...(given ? [] : [`Salt set to ${USUAL_SALT_LB_FT3} lb/ft³ (common practice).`]),
    `A regeneration takes ${REGENERATION_GAL_FT3} gal of water per ft³ (from memory).`,
  ]
  return ok(value, {
    assumptions,
    missing: hardness.missing,
    sources: [...hardness.sources, input.figures.curves[kind].source, COMMON_PRACTICE],
  })
}
