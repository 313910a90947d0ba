import { ASKS, type AskId, type ClueAsk } from './askable.ts'
import { JACKET_MISTAKEN } from './clue-errors.ts'
import { expectedReading, type MeasuredClue, readingDensity } from './clue-likelihood.ts'
import type { SizeHypothesis, TankClues } from './clue-types.ts'
import type { Weighed } from './size-posterior.ts'

/** `bits`: how much of the doubt about the size it takes away on average. `likeliestAfter`: the mean chance of the likeliest size afterwards. */
export type MeasureWorth = { id: AskId; bits: number; likeliestAfter: number }

/** Bins an answer is sorted into: finer than the error of reading it. */
const BINS_PER_SD = 1.5
const MOST_BINS = 80

/** What each open question is worth, the most telling first. Chances in, chances out: the answers a tank would give, weighed by its chance. */
export function measureWorths(weighed: readonly Weighed[], clues: TankClues): MeasureWorth[] {
  const open = ASKS.filter((ask) => ask.clues.every((clue) => clues[clue] == null))
  return open.map((ask) => worthOf(ask, weighed)).sort((a, b) => b.bits - a.bits)
}

function worthOf(ask: ClueAsk, weighed: readonly Weighed[]): MeasureWorth {
  const before = likeliest(weighed)
  const { bits, top } = tells(weighed, answersOf(ask.id, weighed))
  const likeliestAfter = ask.answered * top + (1 - ask.answered) * before
  return { id: ask.id, bits: ask.answered * bits, likeliestAfter: Math.min(1, likeliestAfter) }
}

/** Chance of each answer for each size, in the order of `weighed`. */
function answersOf(id: AskId, weighed: readonly Weighed[]): number[][] {
  if (id === 'jacket') {
    const yes = (size: SizeHypothesis) => (size.jacket ? 1 - JACKET_MISTAKEN : JACKET_MISTAKEN)
    return weighed.map(({ size }) => [yes(size), 1 - yes(size)])
  }
  if (id === 'label') return labelAnswers(weighed)
  return binned(id, weighed)
}

/** A label names one of the sizes, nearly always the right one. */
function labelAnswers(weighed: readonly Weighed[]): number[][] {
  const keys = [...new Set(weighed.map(({ size }) => sizeKey(size)))]
  const at = new Map(keys.map((key, i) => [key, i]))
  const slip = 0.03 / Math.max(1, keys.length)
  return weighed.map(({ size }) => {
    const answers = new Array<number>(keys.length).fill(slip)
    answers[at.get(sizeKey(size)) ?? 0] = 0.97 + slip
    return answers
  })
}

function binned(clue: MeasuredClue, weighed: readonly Weighed[]): number[][] {
  const expected = weighed.map(({ size }) => expectedReading(clue, size))
  const low = Math.min(...expected.map((one) => one.low - 3 * one.sd))
  const high = Math.max(...expected.map((one) => one.high + 3 * one.sd))
  const finest = Math.min(...expected.map((one) => one.sd)) / BINS_PER_SD
  const count = Math.max(2, Math.min(MOST_BINS, Math.ceil((high - low) / finest)))
  const middle = (bin: number) => low + ((bin + 0.5) * (high - low)) / count
  return expected.map((one) => normed(Array.from({ length: count }, (_, bin) => readingDensity(middle(bin), one))))
}

function normed(values: number[]): number[] {
  const sum = values.reduce((all, one) => all + one, 0)
  return values.map((one) => one / sum)
}

/** Mutual information of size and answer, and the mean chance of the likeliest row afterwards. */
function tells(weighed: readonly Weighed[], answers: number[][]): { bits: number; top: number } {
  const count = answers[0]?.length ?? 0
  const bySize = new Map<string, { chance: number; joint: number[] }>()
  const byRow = new Map<number, number[]>()
  const all = new Array<number>(count).fill(0)
  weighed.forEach(({ size, chance }, i) => {
    const key = sizeKey(size)
    const entry = bySize.get(key) ?? { chance: 0, joint: new Array<number>(count).fill(0) }
    const row = byRow.get(size.listed) ?? new Array<number>(count).fill(0)
    entry.chance += chance
    for (let answer = 0; answer < count; answer += 1) {
      const joint = chance * (answers[i]?.[answer] ?? 0)
      entry.joint[answer] = (entry.joint[answer] ?? 0) + joint
      row[answer] = (row[answer] ?? 0) + joint
      all[answer] = (all[answer] ?? 0) + joint
    }
    bySize.set(key, entry)
    byRow.set(size.listed, row)
  })
  let bits = 0
  for (const { chance, joint } of bySize.values())
    joint.forEach((one, answer) => {
      if (one > 0) bits += one * Math.log2(one / (chance * (all[answer] ?? 1)))
    })
  const rows = [...byRow.values()]
  const top = all.reduce((sum, _, answer) => sum + Math.max(0, ...rows.map((row) => row[answer] ?? 0)), 0)
  return { bits: Math.max(0, bits), top }
}

const sizeKey = (size: SizeHypothesis) => `${size.diameterIn}x${size.heightIn}`

function likeliest(weighed: readonly Weighed[]): number {
  const rows = new Map<number, number>()
  for (const { size, chance } of weighed) rows.set(size.listed, (rows.get(size.listed) ?? 0) + chance)
  return Math.max(0, ...rows.values())
}
