/** A distribution of counts: chance[i] belongs to the count first + i. */
export interface CountDistribution {
  readonly first: number
  readonly chance: Float64Array
}
