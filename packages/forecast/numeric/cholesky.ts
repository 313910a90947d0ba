/**
 * Lower Cholesky factor of a symmetric matrix (row-major, size × size). A pivot that is zero or below (a parameter without doubt) gives a zero column,
 * so that semi-definite covariances work. Null when an entry is not finite.
 */
export function cholesky(matrix: ArrayLike<number>, size: number): Float64Array | null {
  const lower = new Float64Array(size * size)
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j] ?? Number.NaN
      for (let k = 0; k < j; k++) sum -= (lower[i * size + k] ?? 0) * (lower[j * size + k] ?? 0)
      if (!Number.isFinite(sum)) return null
      const pivot = lower[j * size + j] ?? 0
      if (i === j) lower[i * size + i] = sum > 0 ? Math.sqrt(sum) : 0
      else lower[i * size + j] = pivot > 0 ? sum / pivot : 0
    }
  }
  return lower
}

/** Solves L x = b for lower-triangular L; a zero pivot gives zero. */
export function forwardSolve(lower: Float64Array, size: number, b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(size)
  for (let i = 0; i < size; i++) {
    let sum = b[i] ?? 0
    for (let k = 0; k < i; k++) sum -= (lower[i * size + k] ?? 0) * (x[k] ?? 0)
    const pivot = lower[i * size + i] ?? 0
    x[i] = pivot > 0 ? sum / pivot : 0
  }
  return x
}

/** Solves Lᵀ x = b for lower-triangular L; a zero pivot gives zero. */
export function backSolve(lower: Float64Array, size: number, b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(size)
  for (let i = size - 1; i >= 0; i--) {
    let sum = b[i] ?? 0
    for (let k = i + 1; k < size; k++) sum -= (lower[k * size + i] ?? 0) * (x[k] ?? 0)
    const pivot = lower[i * size + i] ?? 0
    x[i] = pivot > 0 ? sum / pivot : 0
  }
  return x
}
