import type { EndCause } from '@almanac/records/end-cause'

/** Whether resin failed of itself, had outlived its service when something else ended it, or nobody can say. */
export type LifeEvidence = 'failed' | 'outlived' | 'unclear'

/**
 * Only worn, fouled and oxidised beds say how long resin lasts. Beads lost through a broken distributor, a cracked tank and a removal for convenience
 * cut a life short for another reason: such a bed had lasted at least until then.
 */
export const lifeEvidence: Readonly<Record<EndCause, LifeEvidence>> = {
  worn: 'failed',
  'iron-fouled': 'failed',
  'beads-lost': 'outlived',
  oxidised: 'failed',
  'tank-cracked': 'outlived',
  'removed-for-convenience': 'outlived',
  unknown: 'unclear',
}
