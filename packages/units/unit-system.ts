/** Which units a person reads: US customary or metric. Stored values do not depend on it. */
export const unitSystems = ['us', 'metric'] as const
export type UnitSystem = (typeof unitSystems)[number]
