import quantile from '@stdlib/stats-base-dists-normal-quantile'

export const q = quantile
