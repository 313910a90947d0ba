import type { WeightedNode } from './gauss-nodes.ts'

const kept = new Map<number, readonly WeightedNode[]>()

/** Gauss–Hermite nodes for ∫ e^(−x²) f(x) dx, weights already times e^(x²), so that the sum takes f's logarithm as it is. Newton on the normalised polynomials. */
export function hermiteNodes(count: number): readonly WeightedNode[] {
  let nodes = kept.get(count)
  if (nodes === undefined) {
    nodes = build(count)
    kept.set(count, nodes)
  }
  return nodes
}

function build(count: number): WeightedNode[] {
  const nodes: WeightedNode[] = []
  for (const start of signChanges(count)) {
    let x = start
    for (let i = 0; i < 50; i++) {
      const { value, slope } = hermite(count, x)
      const step = value / slope
      x -= step
      if (Math.abs(step) < 1e-15 * (1 + Math.abs(x))) break
    }
    // With orthonormal polynomials the weight is 2/h'(x)², h' the slope without the factor e^(−x²/2) that hermite() carries.
    const { slope } = hermite(count, x)
    nodes.push({ x, weight: 2 / (slope * slope) })
  }
  return nodes
}

/** Middle of each interval in which the polynomial changes sign: all roots lie within √(2n + 1). */
function signChanges(count: number): number[] {
  const reach = Math.sqrt(2 * count + 1)
  // An odd number, so that no step ends on the root at nought, which would then be found twice.
  const steps = 200 * count + 1
  const starts: number[] = []
  let before = hermite(count, -reach).value
  for (let i = 1; i <= steps; i++) {
    const x = -reach + (2 * reach * i) / steps
    const { value } = hermite(count, x)
    if (before * value < 0) starts.push(x - reach / steps)
    before = value
  }
  return starts
}

/** Orthonormal Hermite polynomial times e^(−x²/2), and e^(−x²/2) times its derivative: √(2n) h_(n−1). */
function hermite(n: number, x: number): { value: number; slope: number } {
  let before = 0
  let value = Math.PI ** -0.25 * Math.exp((-x * x) / 2)
  for (let j = 0; j < n; j++) {
    const next = x * Math.sqrt(2 / (j + 1)) * value - Math.sqrt(j / (j + 1)) * before
    before = value
    value = next
  }
  return { value, slope: Math.sqrt(2 * n) * before }
}
