import type { TrackRecord } from '@almanac/contract/forecasts'
import { formatPercent, type NumberDisplay, showWhole } from '@almanac/units/format-number'

export type Checked = NonNullable<TrackRecord['checked']>
export type CheckedResult = NonNullable<Checked['result']>

/** Plain names of the rules the forecast is held against. */
export const RULES: Record<string, string> = {
  forecast: 'This forecast: age, water, resin and what was seen',
  'age-only Weibull': 'Age alone, one curve for all beds',
  'Kaplan–Meier': 'Age alone, by counting how long beds lasted',
  'fixed age': 'Every bed fails at 12 years',
}

/** "76 of 100 windows turned out right" as a judgement. */
export function judge({ coverage80 }: CheckedResult): string {
  const held = Math.round(coverage80 * 100)
  if (held >= 76 && held <= 84) return 'As it should be: our windows are meant to hold 80%.'
  if (held > 84) return 'They’re meant to hold 80%, so our windows were wider than needed.'
  return 'They’re meant to hold 80%, so our windows were too narrow. Treat their ends with care.'
}

/** ", give or take 2": twice the standard error, where it is known and worth saying. */
export function give({ coverageStandardError }: CheckedResult): string {
  const points = coverageStandardError === null ? 0 : Math.round(coverageStandardError * 200)
  return points >= 1 ? `, give or take ${points}` : ''
}

/** By how many per cent all years together expected more than came; 0 where nothing came. */
function excess(counts: CheckedResult['counts']): number {
  const came = counts.reduce((sum, one) => sum + one.happened, 0)
  return came === 0 ? 0 : Math.round((counts.reduce((sum, one) => sum + one.expected, 0) / came - 1) * 100)
}

/** So far off all years together may be before it is said. */
const AGREES_WITHIN = 10

/** Whether what came lay rather early or late in what was forecast; never at odds with what the counts of all years say. */
export function lean({ bins, counts }: Pick<CheckedResult, 'bins' | 'counts'>): string {
  const total = bins.reduce((sum, n) => sum + n, 0)
  const mean = bins.reduce((sum, n, i) => sum + n * (i + 0.5), 0) / (bins.length * Math.max(1, total))
  const gap = excess(counts)
  if (gap >= AGREES_WITHIN) return 'Beds lasted somewhat longer than we said.'
  if (gap <= -AGREES_WITHIN) return 'Beds failed somewhat earlier than we said.'
  if (mean < 0.46) return 'Beds failed somewhat earlier than we said.'
  if (mean > 0.54) return 'Beds lasted somewhat longer than we said.'
  return 'We were neither too early nor too late on the whole.'
}

/** All years together: what was expected, what came, and which way the forecasts lean. */
export function together(counts: CheckedResult['counts'], display: NumberDisplay): string {
  const sum = (of: (one: CheckedResult['counts'][number]) => number) => Math.round(counts.reduce((total, one) => total + of(one), 0))
  const [expected, came] = [sum((one) => one.expected), sum((one) => one.happened)]
  const gap = excess(counts)
  const lean =
    gap >= AGREES_WITHIN
      ? ` We expected too many, by ${formatPercent(gap / 100, display)}: where numbers matter, such as buying resin, treat our counts as high.`
      : gap <= -AGREES_WITHIN
        ? ` We expected too few, by ${formatPercent(-gap / 100, display)}: keep more resin and hours in reserve than we say.`
        : ' The numbers agree to within 10%.'
  return `All years together we expected ${showWhole(expected, display)} beds to fail, and ${showWhole(came, display)} did.${lean}`
}

/** How many years their range held, and what follows for today's. */
export function ranges(counts: CheckedResult['counts'], widenedBy: number, display: NumberDisplay): string {
  const inside = counts.filter(({ low, high, happened }) => Math.round(happened) >= low && Math.round(happened) <= high).length
  const held = `${inside} of ${counts.length} years fell inside their range.`
  return widenedBy > 1 ? `${held} So today’s ranges for a year are ${formatPercent(widenedBy - 1, display)} wider.` : held
}

/** Twentieths as tenths, for the picture. */
export const tenthsOf = (bins: readonly number[]): number[] =>
  Array.from({ length: 10 }, (_, i) => (bins[2 * i] ?? 0) + (bins[2 * i + 1] ?? 0))

/** "9% nearer" to what came than age alone, by how much lower the forecast's score is. */
export function nearer({ skill }: Pick<CheckedResult, 'skill'>, other: string, display: NumberDisplay): string | null {
  const percent = skill.find((one) => one.method === other)?.percent
  if (percent === undefined || !Number.isFinite(percent)) return null
  const gain = Math.round(percent)
  return gain === 0
    ? 'as near'
    : gain > 0
      ? `${formatPercent(gain / 100, display)} nearer`
      : `${formatPercent(-gain / 100, display)} farther off`
}
