import { type ResinKindId, resinKinds, shortResinKindWords } from '@almanac/records/resin-kind'
import { ok, type Result, refuse } from '@almanac/units/result'
import { type CostOption, cheapestOf, judgeCosts } from './cheapest.ts'
import { type Spread, spreadOf, thinned, usableMinor, usableYears } from './spread.ts'
import { type Running, type RunningInput, yearlyRunning } from './yearly-running.ts'

export type WhichResinInput = Omit<RunningInput, 'figures'> & {
  figures: RunningInput['figures'] & { saltPriceMinorPerLb: number | null; waterPriceMinorPerGal: number | null }
  /** Lives of a new bed of 8% on this water, years, equally likely. */
  livesYears: readonly number[]
  /** How many times as long 10% lasts, equally likely; fine mesh is 8% and lasts as long. */
  longerTen: readonly number[]
  /** What the firm reckons for a rebed with 8%, minor units; null where it has not said. */
  rebedMinor: number | null
  /** What the kit costs more with each resin than with 8%; null where a price is missing. */
  kitMoreMinor: Readonly<Record<ResinKindId, number | null>>
}

export type ResinOption = CostOption<ResinKindId> & { livesYears: Spread; running: Running | null; rebedMinor: number | null }
export type WhichResin = { options: ResinOption[]; cheapest: ResinKindId | null }

export const NO_REBED_PRICE = 'the cost of a planned rebed (enter it under Company settings)'
const noResinPrice = (kind: ResinKindId) => `the price of ${shortResinKindWords[kind]} in these bags (enter it in the stores)`
const MOST_WORLDS_A_SIDE = 24

/**
 * Cost a year of each resin at this water: the rebed over the bed's life, and salt and water. Lives and the gain of 10% are equally likely figures, taken
 * each with each, so that the answer carries their doubt. Salt or water without a price is left out for all alike and said.
 */
export function whichResin(input: WhichResinInput): Result<WhichResin> {
  const lives = usableYears(input.livesYears)
  const longer = usableYears(input.longerTen)
  if (lives === null || longer === null)
    return refuse('How long a new bed lasts on this water is not known, so we can’t calculate its yearly cost. Fix the bed’s record first.')
  if (input.rebedMinor !== null && !usableMinor(input.rebedMinor))
    return refuse('The cost of a planned rebed must be an amount of zero or more; check Company settings.')
  const { saltPriceMinorPerLb: salt, waterPriceMinorPerGal: water } = input.figures
  const notes = { assumptions: [] as string[], missing: [] as string[], sources: [] as string[] }
  const running = resinKinds.map((kind) => {
    const result = yearlyRunning(kind, input)
    if (!result.ok) return null
    notes.assumptions.push(...result.assumptions)
    notes.missing.push(...result.missing)
    notes.sources.push(...result.sources)
    return result.value
  })
  if (running.includes(null)) notes.missing.push('raw water hardness: salt and water are left out')
  if (salt === null) notes.missing.push('price of salt: enter it under Company settings')
  if (water === null) notes.missing.push('price of water: enter it under Company settings')
  const rebeds = resinKinds.map((kind) => sum(input.rebedMinor, kind === 'gel-8' ? 0 : input.kitMoreMinor[kind]))
  const runMinor = running.map((one) => (one === null ? 0 : one.saltLb * (salt ?? 0) + one.waterGal * (water ?? 0)))
  const factor = (kind: ResinKindId, gain: number) => (kind === 'gel-10' ? gain : 1)
  const worlds = thinned(lives, MOST_WORLDS_A_SIDE).flatMap((life) => thinned(longer, MOST_WORLDS_A_SIDE).map((gain) => ({ life, gain })))
  const costs = worlds.map(({ life, gain }) =>
    resinKinds.map((kind, k) => (rebeds[k] ?? Number.NaN) / (life * factor(kind, gain)) + (runMinor[k] ?? 0)),
  )
  const unpriced = Object.fromEntries(
    resinKinds.map((kind) => [kind, [...(input.rebedMinor === null ? [NO_REBED_PRICE] : []), ...missingResin(kind, input)]]),
  ) as Record<ResinKindId, string[]>
  const options = judgeCosts(resinKinds, unpriced, costs).map((option, k) => ({
    ...option,
    livesYears: spreadOf(worlds.map(({ life, gain }) => life * factor(option.key, gain))) ?? { low: 0, middle: 0, high: 0, mean: 0 },
    running: running[k] ?? null,
    rebedMinor: rebeds[k] ?? null,
  }))
  return ok({ options, cheapest: cheapestOf(options)?.key ?? null }, notes)
}

const sum = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a + b)

const missingResin = (kind: ResinKindId, { kitMoreMinor }: WhichResinInput): string[] =>
  kind !== 'gel-8' && kitMoreMinor[kind] === null ? [noResinPrice(kind)] : []
