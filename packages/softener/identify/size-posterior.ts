import { clueLogLikelihood } from './clue-likelihood.ts'
import type { SizeHypothesis, TankClues } from './clue-types.ts'

export type Weighed = { size: SizeHypothesis; chance: number }

/** Sizes kept after weighing: what is left out has together less than this chance. */
const LEFT_OUT = 1e-4
/** No more unlisted sizes are kept once there are so many, for speed, likely or not: what is cut off is given to those kept. Our own limit, no source. */
const MOST_KEPT = 200

/** The chance of every size after the clues, by Bayes; adds up to 1, likeliest first, with the hopeless left out. */
export function weighSizes(hypotheses: readonly SizeHypothesis[], clues: TankClues): Weighed[] {
  const logs = hypotheses.map((size) => Math.log(size.prior) + clueLogLikelihood(clues, size))
  const most = logs.reduce((best, one) => Math.max(best, one), Number.NEGATIVE_INFINITY)
  const raw = hypotheses.map((size, at) => ({ size, chance: Math.exp((logs[at] ?? Number.NEGATIVE_INFINITY) - most) }))
  const total = raw.reduce((sum, one) => sum + one.chance, 0)
  raw.sort((a, b) => b.chance - a.chance)
  const kept: Weighed[] = []
  let unlistedLeft = 0
  let covered = 0
  for (const one of raw) {
    const done = covered >= (1 - LEFT_OUT) * total || kept.length >= MOST_KEPT
    if (done && one.size.listed < 0) unlistedLeft += one.chance
    else kept.push(one)
    covered += one.chance
  }
  // What is cut off belongs to the unlisted sizes kept, so that their share stays what it is.
  const unlistedKept = kept.reduce((sum, one) => sum + (one.size.listed < 0 ? one.chance : 0), 0)
  const grow = unlistedKept > 0 ? 1 + unlistedLeft / unlistedKept : 1
  const scaled = kept.map(({ size, chance }) => ({ size, chance: size.listed < 0 ? chance * grow : chance }))
  const all = sum(scaled)
  return scaled.map(({ size, chance }) => ({ size, chance: chance / all }))
}

/** A row of the table, or (-1) all unlisted sizes together: `size` is its likeliest, the middle of what lies about it for the unlisted. */
export type SizeGroup = { listed: number; chance: number; best: SizeHypothesis; diameterIn: number; heightIn: number; nearShare: number }

/** Unlisted sizes this near the likeliest one are the same tank, measured with the usual errors; in. */
const NEAR = { diameterIn: 1.25, heightIn: 3 }

/** Chances by row of the table; likeliest first. `nearShare` says how much of a group lies about its likeliest size. */
export function groupSizes(weighed: readonly Weighed[]): SizeGroup[] {
  const byRow = new Map<number, Weighed[]>()
  for (const one of weighed) {
    const members = byRow.get(one.size.listed)
    if (members) members.push(one)
    else byRow.set(one.size.listed, [one])
  }
  return [...byRow].flatMap(([listed, members]) => groupOf(listed, members) ?? []).sort((a, b) => b.chance - a.chance)
}

function groupOf(listed: number, members: readonly Weighed[]): SizeGroup | null {
  const best = members[0]?.size
  if (best === undefined) return null
  const near = members.filter(
    ({ size }) =>
      Math.abs(size.diameterIn - best.diameterIn) <= NEAR.diameterIn && Math.abs(size.heightIn - best.heightIn) <= NEAR.heightIn,
  )
  const chance = sum(members)
  const nearChance = sum(near)
  const mean = (pick: (size: SizeHypothesis) => number) => near.reduce((all, one) => all + one.chance * pick(one.size), 0) / nearChance
  if (!(nearChance > 0)) return { listed, chance, best, diameterIn: best.diameterIn, heightIn: best.heightIn, nearShare: 0 }
  return { listed, chance, best, diameterIn: mean((s) => s.diameterIn), heightIn: mean((s) => s.heightIn), nearShare: nearChance / chance }
}

const sum = (members: readonly Weighed[]) => members.reduce((all, one) => all + one.chance, 0)
