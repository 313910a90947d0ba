/** Which units a person reads: US customary or metric. Stored values do not depend on it. */
export type UnitSystem = 'us' | 'metric'
