import { ok, type Result } from '@almanac/units/result'
import { type Advice, adviceFor } from './advice.ts'
import { type Chances, causePosterior } from './cause-posterior.ts'
import { type BedBefore, type CausePrior, causePrior } from './cause-prior.ts'
import { CAUSES, type Cause } from './causes.ts'
import type { CheckId } from './check-types.ts'
import type { DiagnosisSpeaking } from './diagnosis-words.ts'
import { BEADS_AT_TAPS, type Emergency } from './emergency.ts'
import { type Evidence, readEvidence } from './evidence.ts'
import { type Contribution, contributionsTo } from './explain-cause.ts'
import { type CheckWorth, checkWorths } from './next-check.ts'

export type RankedCause = { cause: Cause; chance: number; priorChance: number; contributions: Contribution[] }

export type Triage = {
  /** Beads at the taps: goes before everything else on the page, whatever else was answered. */
  emergency: Emergency | null
  /** Likeliest first; the chances add up to 1. */
  causes: RankedCause[]
  priorBasis: CausePrior['basis']
  /** Checks not yet made, the one worth most first. */
  checks: CheckWorth[]
  /** The check to make next; null where none is worth its time, and in an emergency. */
  next: CheckWorth | null
  /** Null while nothing was answered. */
  advice: Advice | null
  answered: number
  problems: string[]
}

/** `skipped` are checks that cannot be made now: they are not asked for next. */
export type TriageInput = Evidence & DiagnosisSpeaking & { bed?: BedBefore | null; skipped?: readonly CheckId[] }

/** A check is asked for as long as it is worth this much, in hours; our own choice. */
export const WORTH_ASKING_HOURS = 0.05

/**
 * What is wrong with a softener, from symptoms and measurements: every cause weighed by Bayes, the check worth most, and what to do.
 * Never refuses: evidence that cannot be is named in `problems` and left out.
 */
export function triage(input: TriageInput): Result<Triage> & { ok: true } {
  const { words } = input
  const { findings, problems } = readEvidence(input, input)
  const prior = causePrior(input.bed, input)
  const { chances, moves } = causePosterior(prior.chances, findings)
  const checks = checkWorths(chances, new Set(findings.map((one) => one.check.id)))
  const first = checks.find((one) => !input.skipped?.includes(one.check.id))
  const worth = first !== undefined && (first.check.id === 'beads' || first.worthHours >= WORTH_ASKING_HOURS)
  const beads = input.answers.beads === 'yes'
  // In an emergency nothing is found out first.
  const next = worth && !beads ? first : null
  const ranked = rank(chances, prior, (cause) => contributionsTo(cause, moves, words))
  const value: Triage = {
    emergency: beads ? BEADS_AT_TAPS : null,
    ...{ causes: ranked, priorBasis: prior.basis, checks, next, answered: findings.length, problems },
    advice: findings.length === 0 ? null : adviceFor(chances, beads, next !== null, words),
  }
  return ok(value, {
    assumptions: [prior.assumption, words('oneCause'), words('eachAlone'), words('hoursRelative')],
    missing: checks.filter((one) => one.worthHours >= WORTH_ASKING_HOURS).map((one) => words(`check/${one.check.id}`)),
    sources: [words('bayes'), words('practice'), words('memory'), words('quarterLost')],
  }) as Result<Triage> & { ok: true }
}

function rank(chances: Chances, prior: CausePrior, explain: (cause: Cause) => Contribution[]): RankedCause[] {
  return CAUSES.map((cause) => ({
    cause,
    chance: chances[cause.id],
    priorChance: prior.chances[cause.id],
    contributions: explain(cause),
  })).sort((a, b) => b.chance - a.chance)
}
