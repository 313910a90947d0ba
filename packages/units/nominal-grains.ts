/** What a label's nominal grains mean: 32,000 for each cubic foot of resin. Common practice, no source. */
export const NOMINAL_GRAINS_PER_FT3 = 32_000

/** Resin in ft³ for a softener of so many nominal grains: 32,000 → 1, 40,000 → 1¼, 48,000 → 1½, 64,000 → 2. */
export const resinFt3ForGrains = (nominalGrains: number): number => nominalGrains / NOMINAL_GRAINS_PER_FT3
