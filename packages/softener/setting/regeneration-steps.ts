/** Backwash, minutes: within the 5 to 15 of Ten States Standards §4.4.2; longer where iron must go (practice, no source). */
const BACKWASH_MINUTES = 10
const BACKWASH_MINUTES_WITH_METALS = 14
const backwashMinutes = (metals: boolean) => (metals ? BACKWASH_MINUTES_WITH_METALS : BACKWASH_MINUTES)
/** Brine is drawn at about 10 % (8 to 12%, Davis 2010); a gallon of it weighs 8.94 lb and holds this much salt, lb (specific gravity 1.071, from memory). */
const DRAWN_BRINE_LB_PER_GAL = 0.894
/** Brine and slow rinse, gpm/ft³: within 0.25 to 0.62 (Davis 2010; typical data sheets). */
const BRINE_GPM_FT3 = 0.35
/** Slow rinse, gal/ft³: within 7.5 to 22.5 (Davis 2010; UFC 3-240-13FN). */
const SLOW_RINSE_GAL_FT3 = 10
/** Fast rinse, gpm/ft³: 1.5 to 2 (UFC 3-240-13FN), and minutes: 5 to 15 (Davis 2010). */
const FAST_RINSE_GPM_FT3 = 1.75
const FAST_RINSE_MINUTES = 8

/** Water of one regeneration of one tank but for the brine, which depends on the salt, gal. */
export function fixedRegenerationGal(backwashGpm: number, resinFt3: number, metals = false): number {
  return backwashGpm * backwashMinutes(metals) + (SLOW_RINSE_GAL_FT3 + FAST_RINSE_GPM_FT3 * FAST_RINSE_MINUTES) * resinFt3
}

/** Water in which a salt dose is drawn through the bed, gal, refill included: the refill is part of it. */
export function brineGal(saltLb: number): number {
  return saltLb / DRAWN_BRINE_LB_PER_GAL
}

export type StepMinutes = { backwash: number; brineAndSlowRinse: number; fastRinse: number; refill: number | null }

/** Minutes to set for each step; refill is null where the valve's refill flow is not known. */
export function stepMinutes(saltLb: number, resinFt3: number, refillGal: number, refillGpm: number | null, metals = false): StepMinutes {
  const drawn = brineGal(saltLb) + SLOW_RINSE_GAL_FT3 * resinFt3
  return {
    backwash: backwashMinutes(metals),
    brineAndSlowRinse: Math.ceil(drawn / (BRINE_GPM_FT3 * resinFt3)),
    fastRinse: FAST_RINSE_MINUTES,
    refill: refillGpm === null ? null : Math.max(1, Math.round(refillGal / refillGpm)),
  }
}
