export interface WeightedNode {
  readonly x: number
  readonly weight: number
}

/** Gauss–Legendre on [−1, 1], weights adding to 2 (Abramowitz and Stegun 1964, table 25.4). */
const LEGENDRE: Readonly<Record<1 | 3 | 4 | 6, readonly (readonly [number, number])[]>> = {
  1: [[0, 2]],
  3: [
    [-0.774596669241483, 5 / 9],
    [0, 8 / 9],
    [0.774596669241483, 5 / 9],
  ],
  4: [
    [-0.861136311594053, 0.347854845137454],
    [-0.339981043584856, 0.652145154862546],
    [0.339981043584856, 0.652145154862546],
    [0.861136311594053, 0.347854845137454],
  ],
  6: [
    [-0.932469514203152, 0.17132449237917],
    [-0.661209386466265, 0.360761573048139],
    [-0.238619186083197, 0.467913934572691],
    [0.238619186083197, 0.467913934572691],
    [0.661209386466265, 0.360761573048139],
    [0.932469514203152, 0.17132449237917],
  ],
}

/** Nodes for the mean over [from, to], weights adding to 1. */
export function uniformNodes(from: number, to: number, count: 1 | 3 | 4 | 6): WeightedNode[] {
  const half = (to - from) / 2
  return LEGENDRE[count].map(([x, weight]) => ({ x: from + half * (1 + x), weight: weight / 2 }))
}

/** Two nodes of a standard normal, exact for polynomials of degree three (Gauss–Hermite). */
export const NORMAL_NODES: readonly WeightedNode[] = [
  { x: -1, weight: 1 / 2 },
  { x: 1, weight: 1 / 2 },
]
