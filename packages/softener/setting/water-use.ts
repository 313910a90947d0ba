/** Indoor use a person, gal a day: trade rules 60 to 80 (common practice, no source). */
const GAL_PER_PERSON_DAY = 60
/** Mean indoor use of a household, gal a day (Residential End Uses of Water, 2016); taken where nobody knows how many live there. */
const GAL_PER_HOUSEHOLD_DAY = 138

export type WaterUse = { gallonsPerDay: number; basis: 'measured' | 'people' | 'household' }

/** Softened water a day. */
export function waterUse(measuredGalDay: number | null, people: number | null): WaterUse {
  if (measuredGalDay !== null) return { gallonsPerDay: measuredGalDay, basis: 'measured' }
  if (people !== null) return { gallonsPerDay: people * GAL_PER_PERSON_DAY, basis: 'people' }
  return { gallonsPerDay: GAL_PER_HOUSEHOLD_DAY, basis: 'household' }
}
