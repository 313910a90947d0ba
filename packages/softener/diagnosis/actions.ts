import type { Chances } from './cause-posterior.ts'
import { CAUSES, type Cause, type CauseId } from './causes.ts'

/** Hours of one person that each cure takes, materials counted in. For weighing one against another only; common practice, no source. */
export const CURE_HOURS: Readonly<Record<CauseId, number>> = {
  'worn-bed': 9,
  'broken-distributor': 9,
  channelling: 3,
  'iron-fouling': 3,
  'injector-brine': 2,
  'meter-timer': 2,
  bypass: 0.75,
  undersized: 12,
  'water-changed': 1.5,
  'no-fault': 0,
  'mis-set': 0.75,
  'valve-seals': 2.5,
}
/** Going for one repair and finding that it is another: looked for anew on the same visit. */
const OTHER_REPAIR_HOURS = 0.75
/** A visit that did not mend it: the way there, the look-round, the second appointment. */
const CALL_BACK_HOURS = 3
/** A customer told that nothing is wrong while something is. */
const WRONGLY_DISMISSED_HOURS = 4

/** What a cure mends beside its own cause: new resin ends fouling and channels, a new unit nearly everything. */
const MENDS_TOO: Readonly<Partial<Record<CauseId, readonly CauseId[]>>> = {
  'worn-bed': ['broken-distributor', 'channelling', 'iron-fouling'],
  'broken-distributor': ['worn-bed', 'channelling', 'iron-fouling'],
  undersized: ['worn-bed', 'broken-distributor', 'channelling', 'iron-fouling', 'injector-brine', 'meter-timer', 'valve-seals'],
}

/** Taking one cause for the true one and doing what cures it: hours to expect, and the chance that it mends what is wrong. */
export type Weighted = { cause: Cause; expectedHours: number; mends: number }

function hours(taken: Cause, truth: Cause): { hours: number; mends: boolean } {
  const own = CURE_HOURS[taken.id]
  if (taken.id === truth.id || MENDS_TOO[taken.id]?.includes(truth.id)) return { hours: own, mends: true }
  if (truth.cure === 'nothing') return { hours: own, mends: false }
  if (taken.cure === 'repair' && truth.cure === 'repair') return { hours: own + OTHER_REPAIR_HOURS + CURE_HOURS[truth.id], mends: true }
  const dismissed = taken.cure === 'nothing' ? WRONGLY_DISMISSED_HOURS : 0
  return { hours: own + CALL_BACK_HOURS + dismissed + CURE_HOURS[truth.id], mends: false }
}

const HOURS = CAUSES.map((taken) => CAUSES.map((truth) => hours(taken, truth)))

/** Hours to expect of treating it as each cause: its cure, and where that was not it, what follows. Fewest first. */
export function weighCures(chances: Chances): Weighted[] {
  return CAUSES.map((taken, row) => {
    let expectedHours = 0
    let mends = 0
    CAUSES.forEach((truth, column) => {
      const outcome = HOURS[row]?.[column]
      expectedHours += chances[truth.id] * (outcome?.hours ?? 0)
      if (outcome?.mends) mends += chances[truth.id]
    })
    return { cause: taken, expectedHours, mends }
  }).sort((a, b) => a.expectedHours - b.expectedHours || chances[b.cause.id] - chances[a.cause.id])
}

/** The least hours to expect of any cure. */
export function leastHours(chances: Chances): number {
  return Math.min(...weighCures(chances).map((one) => one.expectedHours))
}
