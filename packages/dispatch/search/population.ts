import { apart, type Individual } from './individual.ts'
import type { Random } from './random.ts'
import type { Penalties } from './route-types.ts'

/** Sizes of a hybrid genetic search (Vidal 2022 gives 25, 40, 4 and 5). */
export interface PopulationSizes {
  readonly least: number
  readonly brood: number
  readonly elite: number
  readonly close: number
}

/** Plans without faults and plans with, each kept for its price and for its difference from the others. */
export interface Population {
  readonly sizes: PopulationSizes
  readonly feasible: Individual[]
  readonly faulty: Individual[]
}

export function pricedWithFaults(plan: Individual, penalties: Penalties): number {
  return plan.price + plan.warp * penalties.warp + plan.excess * penalties.load
}

/** Takes a plan in; when its half is full, the worst leave it. */
export function takeIn(population: Population, plan: Individual, penalties: Penalties): void {
  const half = plan.feasible ? population.feasible : population.faulty
  const { least, brood } = population.sizes
  for (const other of half) {
    const distance = apart(plan, other)
    insertNear(plan, other, distance)
    insertNear(other, plan, distance)
  }
  half.push(plan)
  if (half.length <= least + brood) return
  while (half.length > least) {
    rate(half, population.sizes, penalties)
    let worst = -1
    let worstClone = -1
    for (let i = 0; i < half.length; i++) {
      const candidate = half[i] as Individual
      if (worst < 0 || candidate.fitness > (half[worst] as Individual).fitness) worst = i
      const clone = candidate.near.length > 0 && (candidate.near[0] as { distance: number }).distance === 0
      if (clone && (worstClone < 0 || candidate.fitness > (half[worstClone] as Individual).fitness)) worstClone = i
    }
    dismiss(half, worstClone >= 0 ? worstClone : worst)
  }
}

function insertNear(plan: Individual, other: Individual, distance: number): void {
  let at = plan.near.length
  while (at > 0 && (plan.near[at - 1] as { distance: number }).distance > distance) at--
  plan.near.splice(at, 0, { other, distance })
}

function dismiss(half: Individual[], at: number): void {
  const [gone] = half.splice(at, 1)
  for (const plan of half) {
    const i = plan.near.findIndex((entry) => entry.other === gone)
    if (i >= 0) plan.near.splice(i, 1)
  }
}

function difference(plan: Individual, close: number): number {
  const count = Math.min(close, plan.near.length)
  let sum = 0
  for (let i = 0; i < count; i++) sum += (plan.near[i] as { distance: number }).distance
  return count === 0 ? 1 : sum / count
}

/** Rank by price plus rank by difference, the latter weighing less the more of the best must stay. */
function rate(half: Individual[], sizes: PopulationSizes, penalties: Penalties): void {
  const byPrice = half.map((plan) => ({ plan, key: pricedWithFaults(plan, penalties) })).sort((a, b) => a.key - b.key)
  const rank = new Map(byPrice.map(({ plan }, i) => [plan, i]))
  const byDifference = byPrice.map(({ plan }) => ({ plan, key: difference(plan, sizes.close) })).sort((a, b) => b.key - a.key)
  const weight = Math.max(0, 1 - sizes.elite / half.length)
  byDifference.forEach(({ plan }, i) => {
    plan.fitness = ((rank.get(plan) as number) + weight * i) / half.length
  })
}

/** The better of two drawn at random from both halves. */
function tournament(population: Population, random: Random): Individual {
  const draw = (): Individual => {
    const at = random.below(population.feasible.length + population.faulty.length)
    const half = at < population.feasible.length ? population.feasible : population.faulty
    return half[at < population.feasible.length ? at : at - population.feasible.length] as Individual
  }
  const one = draw()
  const two = draw()
  return one.fitness <= two.fitness ? one : two
}

/** Two parents, neither too alike nor too different if a few draws find such. */
export function chooseParents(population: Population, penalties: Penalties, random: Random): [Individual, Individual] {
  rate(population.feasible, population.sizes, penalties)
  rate(population.faulty, population.sizes, penalties)
  const first = tournament(population, random)
  let second = tournament(population, random)
  for (let tries = 0; tries < 10; tries++) {
    const distance = second === first ? 0 : apart(first, second)
    if (distance >= 0.1 && distance <= 0.5) break
    second = tournament(population, random)
  }
  return [first, second]
}
