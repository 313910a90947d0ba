/** Figures that are equally likely, as one looks at them: one in ten below `low`, half below `middle`, nine in ten below `high`. */
export type Spread = { low: number; middle: number; high: number; mean: number }

/** The value below which a share of the equally likely figures lies, straight between them; `sorted` rises and is not empty. */
export function quantileOf(sorted: readonly number[], share: number): number {
  const at = Math.min(Math.max(share * sorted.length - 0.5, 0), sorted.length - 1)
  const below = sorted[Math.floor(at)] ?? 0
  const above = sorted[Math.ceil(at)] ?? below
  return below + (above - below) * (at - Math.floor(at))
}

/** Spread of equally likely figures; null of none, or where one is no number. */
export function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0 || !values.every(Number.isFinite)) return null
  const sorted = [...values].sort((a, b) => a - b)
  const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length
  return { low: quantileOf(sorted, 0.1), middle: quantileOf(sorted, 0.5), high: quantileOf(sorted, 0.9), mean }
}

/** At most `count` equally likely figures with about the same spread. */
export function thinned(values: readonly number[], count: number): number[] {
  const sorted = [...values].sort((a, b) => a - b)
  if (sorted.length <= count) return sorted
  return Array.from({ length: count }, (_, i) => quantileOf(sorted, (i + 0.5) / count))
}

/** Lives and factors that can be reckoned with: above zero and finite; null where none is left. */
export function usableYears(values: readonly number[]): number[] | null {
  const usable = values.filter((value) => Number.isFinite(value) && value > 0)
  return usable.length === values.length && usable.length > 0 ? usable : null
}

/** An amount of minor units that can be reckoned with: zero or more, below a million millions. */
export function usableMinor(minor: number): boolean {
  return minor >= 0 && minor < 1e12
}
