import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'

const SIZE = PARAMETER_KEYS.length

/** A value with its gradient and the lower triangle of its Hessian (row-major, the upper one left at nil). */
export interface Derivatives {
  value: number
  readonly gradient: Float64Array
  readonly hessian: Float64Array
  clear(): void
  addAt(i: number, j: number, by: number): void
  /** Adds square · a aᵀ + cross · (a bᵀ + b aᵀ) to the Hessian. */
  addSquare(a: Float64Array, b: Float64Array, square: number, cross: number): void
}

export function derivatives(): Derivatives {
  const gradient = new Float64Array(SIZE)
  const hessian = new Float64Array(SIZE * SIZE)
  return {
    value: 0,
    gradient,
    hessian,
    clear() {
      this.value = 0
      gradient.fill(0)
      hessian.fill(0)
    },
    addAt(i, j, by) {
      const at = i > j ? i * SIZE + j : j * SIZE + i
      hessian[at] = (hessian[at] as number) + by
    },
    addSquare(a, b, square, cross) {
      for (let i = 0; i < SIZE; i++)
        for (let j = 0; j <= i; j++)
          hessian[i * SIZE + j] =
            (hessian[i * SIZE + j] as number) +
            square * (a[i] as number) * (a[j] as number) +
            cross * ((a[i] as number) * (b[j] as number) + (b[i] as number) * (a[j] as number))
    },
  }
}
