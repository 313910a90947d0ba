import type { Random } from '../search/random.ts'

/** How people are divided into crews of one or two, as indexes; who is in none is spare. */
export type Division = readonly (readonly number[])[]

/** Above this many ways they are tried by small changes instead of one by one. */
const FEW_ENOUGH = 250

export const keyOf = (division: Division): string =>
  division
    .map((crew) => [...crew].sort((a, b) => a - b).join('+'))
    .sort()
    .join(' ')

/** Every way to divide `hands` people into at most `mostCrews` crews; null where there are too many to try each. Nobody is spare while a vehicle is. */
export function allDivisions(hands: number, mostCrews: number): Division[] | null {
  const found: Division[] = []
  const divide = (left: readonly number[], crews: Division): boolean => {
    const [first, ...rest] = left
    if (first === undefined) {
      if (crews.flat().length === hands || crews.length === mostCrews) found.push(crews)
      return found.length <= FEW_ENOUGH
    }
    if (crews.length < mostCrews) {
      if (!divide(rest, [...crews, [first]])) return false
      for (const other of rest) {
        const others = rest.filter((one) => one !== other)
        if (!divide(others, [...crews, [first, other]])) return false
      }
    }
    return divide(rest, crews)
  }
  return divide([...Array(hands).keys()], []) ? found : null
}

/** Pairs for as many as there are vehicles for, the rest alone: where a search begins. */
export function firstDivision(hands: number, mostCrews: number): Division {
  const all = [...Array(hands).keys()]
  const pairs = Math.max(0, Math.min(Math.floor(hands / 2), hands - mostCrews))
  const paired = Array.from({ length: pairs }, (_, i) => [all[2 * i] as number, all[2 * i + 1] as number])
  return [...paired, ...all.slice(2 * pairs).map((one) => [one])].slice(0, mostCrews)
}

/** One small change: two people change places, a pair parts, two singles join, or somebody spare comes in. */
export function changed(division: Division, hands: number, mostCrews: number, random: Random): Division {
  const crews = division.map((crew) => [...crew])
  const spare = [...Array(hands).keys()].filter((one) => !crews.some((crew) => crew.includes(one)))
  const pick = <T>(from: readonly T[]): T | undefined => from[random.below(Math.max(1, from.length))]
  const crew = pick(crews)
  const other = pick(crews)
  if (!crew || !other) return division
  const way = random.below(3)
  if (way === 0 && crew.length === 2 && (crews.length < mostCrews || spare.length > 0)) {
    const leaves = crew.pop() as number
    if (crews.length < mostCrews) return [...crews, [leaves]]
    return crews
  }
  if (way === 1 && crew !== other && crew.length === 1 && other.length === 1) {
    crew.push(...other)
    return crews.filter((one) => one !== other)
  }
  if (spare.length > 0 && (way === 2 || crew === other)) {
    const comes = pick(spare) as number
    if (crew.length === 1) crew.push(comes)
    else crew[random.below(2)] = comes
    return crews
  }
  if (crew === other) return crews
  const i = random.below(crew.length)
  const j = random.below(other.length)
  const moved = crew[i] as number
  crew[i] = other[j] as number
  other[j] = moved
  return crews
}
