import { backSolve, cholesky, forwardSolve } from './cholesky.ts'

/** A function to be maximised with its derivatives; hessian row-major. */
export interface Surface {
  readonly value: number
  readonly gradient: Float64Array
  readonly hessian: Float64Array
}

export interface Maximum {
  readonly converged: boolean
  readonly iterations: number
  readonly theta: Float64Array
  readonly surface: Surface
}

/**
 * Newton's method with step halving, and a ridge where the surface is not yet concave. Converged when the Newton decrement (twice the expected gain)
 * falls below `tolerance` relative to the value. Deterministic.
 */
export function maximise(at: (theta: Float64Array) => Surface, start: ArrayLike<number>, limit = 100, tolerance = 1e-14): Maximum {
  let theta: Float64Array = Float64Array.from(start)
  let surface = at(theta)
  for (let iterations = 1; iterations <= limit; iterations++) {
    const step = ascentStep(surface, theta.length)
    if (step === null) break
    const decrement = step.reduce((sum, value, i) => sum + value * (surface.gradient[i] as number), 0)
    const small = decrement < tolerance * (1 + Math.abs(surface.value))
    const next = climb(at, theta, step, surface)
    if (next === null) return { converged: small || decrement < 1e-9, iterations, theta, surface }
    theta = next.theta
    surface = next.surface
    if (small) return { converged: true, iterations, theta, surface }
  }
  return { converged: false, iterations: limit, theta, surface }
}

function climb(
  at: (theta: Float64Array) => Surface,
  theta: Float64Array,
  step: Float64Array,
  from: Surface,
): { theta: Float64Array; surface: Surface } | null {
  for (let factor = 1; factor > 1e-10; factor /= 2) {
    const tried = theta.map((value, i) => value + factor * (step[i] as number))
    const surface = at(tried)
    if (Number.isFinite(surface.value) && surface.value >= from.value - 1e-13 * Math.abs(from.value)) return { theta: tried, surface }
  }
  return null
}

/** Newton step (−H + ridge)⁻¹ g; null when the derivatives are no numbers. */
function ascentStep(surface: Surface, size: number): Float64Array | null {
  if (!surface.gradient.every(Number.isFinite) || !surface.hessian.every(Number.isFinite)) return null
  const diagonal = Math.max(1e-8, ...Array.from({ length: size }, (_, i) => Math.abs(surface.hessian[i * size + i] as number)))
  for (let ridge = 0; ridge < 1e12 * diagonal; ridge = ridge === 0 ? 1e-6 * diagonal : ridge * 10) {
    const negative = surface.hessian.map((value, index) => -value + (index % (size + 1) === 0 ? ridge : 0))
    const lower = cholesky(negative, size)
    if (lower !== null && isPositive(lower, size)) return backSolve(lower, size, forwardSolve(lower, size, surface.gradient))
  }
  return null
}

function isPositive(lower: Float64Array, size: number): boolean {
  for (let i = 0; i < size; i++) if (!((lower[i * size + i] as number) > 0)) return false
  return true
}

/** Inverse of −H: the covariance of the estimate, or of the posterior in Laplace's approximation. Null where the surface is not concave. */
export function inverseCurvature(hessian: Float64Array, size: number): Float64Array | null {
  const lower = cholesky(
    hessian.map((value) => -value),
    size,
  )
  // A pivot that cancels to nothing is a direction the data say nothing about, whatever sign rounding gave it.
  const flat = (i: number) => !((lower?.[i * size + i] ?? 0) ** 2 > 1e-12 * -(hessian[i * size + i] as number))
  if (lower === null || Array.from({ length: size }, (_, i) => i).some(flat)) return null
  const inverse = new Float64Array(size * size)
  for (let j = 0; j < size; j++) {
    const unit = new Float64Array(size)
    unit[j] = 1
    const column = backSolve(lower, size, forwardSolve(lower, size, unit))
    for (let i = 0; i < size; i++) inverse[i * size + j] = column[i] as number
  }
  return inverse
}
