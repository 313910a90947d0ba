import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'

const SIZE = PARAMETER_KEYS.length

/** A value with its gradient and the lower triangle of its Hessian (row-major, the upper one left at nil). */
export interface Derivatives {
  value: number
  readonly gradient: Float64Array
  readonly hessian: Float64Array
  clear(): void
  addAt(i: number, j: number, by: number): void
  /** Adds first · slope to the gradient and second · slope slopeᵀ to the Hessian. */
  addProduct(slope: Float64Array, first: number, second: number): void
  /** Adds factor · (a bᵀ + b aᵀ). */
  addCross(a: Float64Array, b: Float64Array, factor: number): void
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
    addProduct(a, first, second) {
      for (let i = 0; i < SIZE; i++) {
        const own = a[i] as number
        gradient[i] = (gradient[i] as number) + first * own
        const by = second * own
        for (let j = 0; j <= i; j++) hessian[i * SIZE + j] = (hessian[i * SIZE + j] as number) + by * (a[j] as number)
      }
    },
    addCross(a, b, factor) {
      for (let i = 0; i < SIZE; i++)
        for (let j = 0; j <= i; j++)
          hessian[i * SIZE + j] =
            (hessian[i * SIZE + j] as number) + factor * ((a[i] as number) * (b[j] as number) + (b[i] as number) * (a[j] as number))
    },
  }
}

/** ln Σ e^(term) with gradient and Hessian, kept relative to the largest term. */
export class MixedTerms {
  private top = Number.NEGATIVE_INFINITY
  private sum = 0
  private readonly slopes = new Float64Array(SIZE)
  private readonly squares = new Float64Array(SIZE * SIZE)

  clear(): void {
    this.top = Number.NEGATIVE_INFINITY
    this.sum = 0
    this.slopes.fill(0)
    this.squares.fill(0)
  }

  add(term: Derivatives): void {
    if (term.value > this.top) {
      const shrink = Math.exp(this.top - term.value)
      this.sum *= shrink
      for (let i = 0; i < SIZE; i++) this.slopes[i] = (this.slopes[i] as number) * shrink
      for (let i = 0; i < SIZE * SIZE; i++) this.squares[i] = (this.squares[i] as number) * shrink
      this.top = term.value
    }
    const share = Math.exp(term.value - this.top)
    this.sum += share
    for (let i = 0; i < SIZE; i++) {
      const own = term.gradient[i] as number
      this.slopes[i] = (this.slopes[i] as number) + share * own
      for (let j = 0; j <= i; j++) {
        const at = i * SIZE + j
        this.squares[at] = (this.squares[at] as number) + share * ((term.hessian[at] as number) + own * (term.gradient[j] as number))
      }
    }
  }

  /** Adds sign × the logarithm of the sum. */
  addTo(out: Derivatives, sign: number): void {
    out.value += sign * (this.top + Math.log(this.sum))
    for (let i = 0; i < SIZE; i++) {
      const mean = (this.slopes[i] as number) / this.sum
      out.gradient[i] = (out.gradient[i] as number) + sign * mean
      for (let j = 0; j <= i; j++) {
        const at = i * SIZE + j
        out.hessian[at] =
          (out.hessian[at] as number) + sign * ((this.squares[at] as number) / this.sum - (mean * (this.slopes[j] as number)) / this.sum)
      }
    }
  }
}
