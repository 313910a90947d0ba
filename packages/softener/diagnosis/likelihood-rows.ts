import type { CauseId } from './causes.ts'
import type { CheckAnswer } from './check-types.ts'

/** The order of the columns below. */
export const CAUSE_ORDER: readonly CauseId[] = [
  'worn-bed',
  'broken-distributor',
  'channelling',
  'iron-fouling',
  'injector-brine',
  'meter-timer',
  'bypass',
  'undersized',
  'water-changed',
  'no-fault',
  'mis-set',
  'valve-seals',
]

/** An answer with its chance in each cause, in hundredths, in the order of `CAUSE_ORDER`. */
export type AnswerRow = readonly [value: string, hundredths: readonly number[]]

/** Never quite impossible: people tell things wrongly, and faults come in odd shapes. */
const LEAST = 0.005

/**
 * Turns rows of hundredths into answers whose chances add up to 1 for each cause.
 * @throws RangeError where a cause's hundredths do not add up to 100: one of the answers is found whatever is at work, so the table is mistyped.
 */
export function answersFrom(rows: readonly AnswerRow[]): CheckAnswer[] {
  for (const [at, cause] of CAUSE_ORDER.entries()) {
    const sum = rows.reduce((total, [, hundredths]) => total + (hundredths[at] ?? 0), 0)
    if (sum !== 100)
      throw new RangeError(`The chances of "${rows.map(([value]) => value).join('", "')}" add up to ${sum}, not to 100, in ${cause}.`)
  }
  const raised = rows.map(([, hundredths]) => CAUSE_ORDER.map((_, at) => Math.max(LEAST, (hundredths[at] ?? 0) / 100)))
  const totals = CAUSE_ORDER.map((_, at) => raised.reduce((sum, row) => sum + (row[at] ?? 0), 0))
  return rows.map(([value], row) => ({
    value,
    chances: Object.fromEntries(CAUSE_ORDER.map((id, at) => [id, (raised[row]?.[at] ?? 0) / (totals[at] ?? 1)])) as Record<CauseId, number>,
  }))
}
