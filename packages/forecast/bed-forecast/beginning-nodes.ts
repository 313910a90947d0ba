import { uniformNodes, type WeightedNode } from '../numeric/gauss-nodes.ts'

export interface BeginningRange {
  readonly earliest: number
  readonly latest: number
  readonly backDays: number
}

/** Possible beginnings of a bed with their beliefs, which add to 1: the more, the wider the range. */
export function beginningNodes({ earliest, latest, backDays }: BeginningRange): WeightedNode[] {
  const width = latest - earliest
  const nodes = uniformNodes(earliest, latest, width <= 31 ? 1 : width <= 550 ? 3 : width <= 2200 ? 4 : 6)
  if (backDays === Number.POSITIVE_INFINITY) return nodes
  const beliefs = nodes.map(({ x, weight }) => weight * Math.exp((x - latest) / backDays))
  const total = beliefs.reduce((sum, belief) => sum + belief, 0)
  return nodes.map(({ x }, i) => ({ x, weight: (beliefs[i] as number) / total }))
}
