/**
 * Operating capacity in cold or warm water, as a share of that at 60 °F: about +5% from 60 to 80 °F and a steep loss below 50 °F
 * (Michaud, Water Conditioning & Purification). The slope below 50 °F, 1.5% a degree, is from memory.
 */
export function temperatureFactor(temperatureF: number): number {
  if (temperatureF >= 80) return 1.05
  if (temperatureF >= 50) return 1 + 0.0025 * (temperatureF - 60)
  return Math.max(0.5, 0.975 - 0.015 * (50 - temperatureF))
}

/** Dissolved solids up to which the capacity curves hold, mg/L; above, 2% is taken off for each 500 mg/L more (from memory). */
export const TDS_FREE_MG_L = 500

/** Operating capacity in salty water, as a share of that at 500 mg/L dissolved solids. From memory, unverified; never below a half. */
export function dissolvedSolidsFactor(tdsMgL: number): number {
  return Math.max(0.5, 1 - (0.02 * Math.max(0, tdsMgL - TDS_FREE_MG_L)) / 500)
}

/** Yearly loss of capacity in ordinary service: 1 to 5 % (UFC 3-240-13FN §2-2.5.1.4); the middle is taken where nothing is measured. */
export const YEARLY_LOSS = { least: 0.01, usual: 0.03, most: 0.05 } as const

/** Share of its first capacity that a bed still has after `years`, in a straight line; never below zero. */
export function ageFactor(years: number, yearlyLoss: number = YEARLY_LOSS.usual): number {
  return Math.max(0, 1 - yearlyLoss * Math.max(0, years))
}

/**
 * Average hardness leakage, mg/L as CaCO₃: about 5 at 8 lb/ft³ (Michaud); taken inversely with the dose, and with the square of
 * dissolved solids over 1,000 mg/L where those are higher (both from memory).
 */
export function leakageMgL(saltLbFt3: number, tdsMgL: number | null): number | null {
  if (!(saltLbFt3 > 0)) return null
  const solids = tdsMgL !== null && tdsMgL > 1000 ? (tdsMgL / 1000) ** 2 : 1
  return ((5 * 8) / saltLbFt3) * solids
}
