import type { LifeRecord } from '@almanac/forecast/lifetime/life-record'

/** Lives that ended at known ages. */
export const exact = (...ages: number[]): LifeRecord[] => ages.map((age) => ({ lower: age, upper: age }))
export const running = (age: number, weight = 1): LifeRecord => ({ lower: age, upper: Number.POSITIVE_INFINITY, weight })
export const life = (age: number, failed: boolean, covariates: number[], entry = 0): LifeRecord => ({
  lower: age,
  upper: failed ? age : Number.POSITIVE_INFINITY,
  covariates,
  entry,
})

/** Agreement relative to the value, or to 1 where the value is smaller. */
export const off = (value: number | undefined, expected: number | undefined) =>
  Math.abs((value ?? Number.NaN) - (expected ?? Number.NaN)) / Math.max(1e-3, Math.abs(expected ?? 0))

/** Bearing cages still running, by hours and number (Meeker & Escobar 1998). */
export const RUNNING_CAGES: readonly (readonly [number, number])[] = [
  [50, 288],
  [150, 148],
  [250, 124],
  [350, 111],
  [450, 106],
  [550, 99],
  [650, 110],
  [750, 114],
  [850, 119],
  [950, 127],
  [1050, 123],
  [1150, 93],
  [1250, 47],
  [1350, 41],
  [1450, 27],
  [1550, 11],
  [1650, 6],
  [1850, 1],
  [2050, 2],
]
