export type CauseId =
  | 'worn-bed'
  | 'broken-distributor'
  | 'channelling'
  | 'iron-fouling'
  | 'injector-brine'
  | 'meter-timer'
  | 'bypass'
  | 'undersized'
  | 'water-changed'
  | 'no-fault'
  | 'mis-set'
  | 'valve-seals'

export type ActionId = 'rebed' | 'clean' | 'repair' | 'replace' | 'nothing'

/** Where a figure of the diagnosis is from: its key among the words. */
export type DiagnosisSource = 'practice' | 'memory'

/** `diagnosis` of the words says what it is called, what it means and what cures it. */
export type Cause = {
  readonly id: CauseId
  /** Share of complaints that it is behind, where nothing is known of the bed. */
  readonly share: number
  readonly cure: ActionId
  readonly source: DiagnosisSource
}

const cause = (id: CauseId, share: number, cure: ActionId, source: DiagnosisSource = 'memory'): Cause => ({ id, share, cure, source })

/**
 * What may be behind a complaint. One cause at a time is reckoned with. How often each is met was published nowhere that was found:
 * the shares are from memory and add up to 1; the bed's own share follows from its forecast or its age where one is known.
 */
export const CAUSES: readonly Cause[] = [
  cause('worn-bed', 0.16, 'rebed', 'practice'),
  cause('broken-distributor', 0.04, 'rebed', 'practice'),
  cause('channelling', 0.04, 'clean'),
  cause('iron-fouling', 0.08, 'clean', 'practice'),
  cause('injector-brine', 0.2, 'repair'),
  cause('meter-timer', 0.13, 'repair'),
  cause('bypass', 0.09, 'repair', 'practice'),
  cause('undersized', 0.06, 'replace'),
  cause('water-changed', 0.05, 'repair'),
  cause('no-fault', 0.07, 'nothing'),
  cause('mis-set', 0.04, 'repair', 'practice'),
  cause('valve-seals', 0.04, 'repair'),
]
