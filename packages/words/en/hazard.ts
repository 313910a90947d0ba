/** The word that a caution begins with: what can hurt, or that the work is another trade’s. */
export const hazard = {
  pressure: 'Pressure',
  electricity: 'Electricity',
  lifting: 'Lifting',
  chemical: 'Chemical',
  water: 'Water',
  slip: 'Slippery',
  refer: 'Stop and refer',
} as const
