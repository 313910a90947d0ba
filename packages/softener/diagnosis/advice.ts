import type { CautionKind } from '@almanac/records/caution-kind'
import { ACTION_LABELS, weighCures } from './actions.ts'
import type { Chances } from './cause-posterior.ts'
import { type ActionId, CAUSES } from './causes.ts'

export type Advice = {
  action: ActionId
  label: string
  /** `now`: do it; `check-first`: one more check is worth its time; `today`: the emergency's own. */
  urgency: 'now' | 'check-first' | 'today'
  /** Chance that it mends what is wrong. */
  mends: number
  /** Hours to expect, call-backs counted in, of this and of the best of another kind. */
  expectedHours: number
  nextBest: { label: string; expectedHours: number } | null
  sentences: string[]
  cautions: readonly { kind: CautionKind; text: string }[]
  /** Kind of job to propose; null where there is none to do. */
  jobKind: 'emergency' | 'rebed' | 'cleaning' | 'repair' | 'installation' | null
}

const JOB = { rebed: 'rebed', clean: 'cleaning', repair: 'repair', replace: 'installation', nothing: null } as const

const CLEANING_CAUTIONS: Advice['cautions'] = [
  {
    kind: 'chemical',
    text: 'Never mix bleach with iron cleaner: it makes toxic gas. Rinse one out fully before the other comes near, and air the room.',
  },
]

/** What to do, by the fewest hours to expect; beads at the taps are an emergency whatever the chances say. */
export function adviceFor(chances: Chances, beads: boolean, checkWorthIt: boolean): Advice {
  const weighed = weighCures(chances)
  const best = weighed.find((one) => !beads || one.cause.id === 'broken-distributor') ?? weighed[0]
  if (best === undefined) throw new Error('There’s nothing to compare.')
  const action = best.cause.cure
  const other = weighed.find((one) => one.cause.cure !== action)
  return {
    ...{ action, label: ACTION_LABELS[action], mends: best.mends, expectedHours: best.expectedHours },
    urgency: beads ? 'today' : checkWorthIt ? 'check-first' : 'now',
    nextBest: other ? { label: ACTION_LABELS[other.cause.cure], expectedHours: other.expectedHours } : null,
    sentences: beads
      ? ['Make it safe today. Then rebed with a new distributor: tube and bed come out together.']
      : sentences(action, chances),
    cautions: action === 'clean' ? CLEANING_CAUTIONS : [],
    jobKind: beads ? 'emergency' : JOB[action],
  }
}

/** The likeliest of the causes with this cure speaks first; a second one follows where it is nearly as likely. */
function sentences(action: ActionId, chances: Chances): string[] {
  const alike = CAUSES.filter((one) => one.cure === action).sort((a, b) => chances[b.id] - chances[a.id])
  const [first, second] = alike
  if (first === undefined) return []
  const near = second !== undefined && chances[second.id] > 0.4 * chances[first.id]
  return near
    ? [first.cureText, `If that is not it: ${second.cureText.charAt(0).toLowerCase()}${second.cureText.slice(1)}`]
    : [first.cureText]
}
