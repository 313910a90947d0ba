import { weighCures } from './actions.ts'
import type { Chances } from './cause-posterior.ts'
import { type ActionId, CAUSES } from './causes.ts'
import type { DiagnosisCaution } from './check-types.ts'
import type { DiagnosisWords } from './diagnosis-words.ts'

export type Advice = {
  action: ActionId
  /** `now`: do it; `check-first`: one more check is worth its time; `today`: the emergency's own. */
  urgency: 'now' | 'check-first' | 'today'
  /** Chance that it mends what is wrong. */
  mends: number
  /** Hours to expect, call-backs counted in, of this and of the best of another kind. */
  expectedHours: number
  nextBest: { action: ActionId; expectedHours: number } | null
  /** In the reader's language. */
  sentences: string[]
  cautions: readonly DiagnosisCaution[]
  /** Kind of job to propose; null where there is none to do. */
  jobKind: 'emergency' | 'rebed' | 'cleaning' | 'repair' | 'installation' | null
}

const JOB = { rebed: 'rebed', clean: 'cleaning', repair: 'repair', replace: 'installation', nothing: null } as const

const CLEANING_CAUTIONS: Advice['cautions'] = [{ kind: 'chemical', says: 'rinse-between' }]

/** What to do, by the fewest hours to expect; beads at the taps are an emergency whatever the chances say. */
export function adviceFor(chances: Chances, beads: boolean, checkWorthIt: boolean, words: DiagnosisWords): Advice {
  const weighed = weighCures(chances)
  const best = weighed.find((one) => !beads || one.cause.id === 'broken-distributor') ?? weighed[0]
  if (best === undefined) throw new Error('There’s nothing to compare.')
  const action = best.cause.cure
  const other = weighed.find((one) => one.cause.cure !== action)
  return {
    ...{ action, mends: best.mends, expectedHours: best.expectedHours },
    urgency: beads ? 'today' : checkWorthIt ? 'check-first' : 'now',
    nextBest: other ? { action: other.cause.cure, expectedHours: other.expectedHours } : null,
    sentences: beads ? [words('safeFirst')] : sentences(action, chances, words),
    cautions: action === 'clean' ? CLEANING_CAUTIONS : [],
    jobKind: beads ? 'emergency' : JOB[action],
  }
}

/** The likeliest of the causes with this cure speaks first; a second one follows where it is nearly as likely. */
function sentences(action: ActionId, chances: Chances, words: DiagnosisWords): string[] {
  const alike = CAUSES.filter((one) => one.cure === action).sort((a, b) => chances[b.id] - chances[a.id])
  const [first, second] = alike
  if (first === undefined) return []
  const said = words(`${first.id}/cure`)
  if (second === undefined || chances[second.id] <= 0.4 * chances[first.id]) return [said]
  const other = words(`${second.id}/cure`)
  return [said, words('ifNot', { cure: `${other.charAt(0).toLowerCase()}${other.slice(1)}` })]
}
