import { leastHours } from './actions.ts'
import { afterFinding, type Chances, findingLikelihood } from './cause-posterior.ts'
import type { Check, CheckId } from './check-types.ts'
import { CHECKS } from './checks.ts'
import { saidWeights } from './evidence.ts'
import { CAUSE_ORDER } from './likelihood-rows.ts'

/**
 * `savesHours`: hours saved on average if something is done right after this check. `bits`: how much of the doubt about the cause it takes
 * away. `worthHours`: both together, its own time taken off.
 */
export type CheckWorth = { check: Check; savesHours: number; bits: number; worthHours: number }

/** Looking one check ahead misses what pays only with the next: each bit of doubt taken away counts for half an hour. Our own choice. */
export const HOURS_PER_BIT = 0.5

/** An answer that comes days later costs a second way there, and hard water until then: hours, as a call-back does. Our own choice. */
const WAITING_HOURS = 3

/** With the valve off two people work. */
const PEOPLE = { telephone: 1, site: 1, opened: 2 } as const

/**
 * What each check not yet made is worth, most first. Beads at the taps are asked before anything else: the answer may be an emergency.
 */
export function checkWorths(chances: Chances, made: ReadonlySet<CheckId>): CheckWorth[] {
  const now = leastHours(chances)
  const worths = CHECKS.filter((check) => !made.has(check.id)).map((check) => worthOf(check, chances, now))
  return worths.sort((a, b) => Number(b.check.id === 'beads') - Number(a.check.id === 'beads') || b.worthHours - a.worthHours)
}

function worthOf(check: Check, chances: Chances, now: number): CheckWorth {
  let hoursAfter = 0
  let bits = 0
  check.answers.forEach((_, chosen) => {
    const weights = saidWeights(check, chosen)
    const likelihood = findingLikelihood(check, weights)
    const heard = CAUSE_ORDER.reduce((sum, cause) => sum + chances[cause] * likelihood[cause], 0)
    if (!(heard > 0)) return
    const { after, factors } = afterFinding(chances, check, weights)
    hoursAfter += heard * leastHours(after)
    for (const cause of CAUSE_ORDER) if (after[cause] > 0) bits += heard * after[cause] * Math.log2(factors[cause])
  })
  const costHours = (check.minutes / 60) * PEOPLE[check.place] + (check.days ? WAITING_HOURS : 0)
  const [saved, told] = [Math.max(0, now - hoursAfter), Math.max(0, bits)]
  return { check, savesHours: saved, bits: told, worthHours: saved + HOURS_PER_BIT * told - costHours }
}
