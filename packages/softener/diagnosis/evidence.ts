import { formatHardnessGpg } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import type { Check, CheckId } from './check-types.ts'
import { CHECKS } from './checks.ts'
import { answerWords, type DiagnosisSpeaking } from './diagnosis-words.ts'
import { gradeCapacity, gradeOutlet, gradeSalt } from './graded.ts'

/** What was measured; null or left out where it was not. Shares are of what should be: 0.6 is 60%. */
export type Measured = {
  capacityShare?: number | null
  outletGpg?: number | null
  tapGpg?: number | null
  saltShareOfSetting?: number | null
}

export type Evidence = { answers: Partial<Record<CheckId, string>>; measured?: Measured }

/** A check that was answered: how well each of its answers goes with what was told or read, and what that was in words. */
export type WeighedCheck = { check: Check; weights: number[]; words: string; measured: boolean }
export type Findings = { findings: WeighedCheck[]; problems: string[] }

/** The most that can be; `share`: a share of what should be, else gpg. */
const LIMITS: Record<keyof Measured, { most: number; share: boolean }> = {
  capacityShare: { most: 1.5, share: true },
  outletGpg: { most: 250, share: false },
  tapGpg: { most: 250, share: false },
  saltShareOfSetting: { most: 10, share: true },
}

/** Answers and measurements as weights over each check's answers, in the order of the checks. What cannot be is named and left out. */
export function readEvidence({ answers, measured = {} }: Evidence, speaking: DiagnosisSpeaking): Findings {
  const { display, words } = speaking
  const problems: string[] = []
  const kept: Measured = {}
  for (const key of Object.keys(LIMITS) as (keyof Measured)[]) {
    const value = measured[key]
    if (value === null || value === undefined) continue
    const { most, share } = LIMITS[key]
    if (value >= 0 && value <= most) kept[key] = value
    else {
      const show = (one: number) => (share ? formatPercent(one, display) : formatHardnessGpg(one, display))
      problems.push(words(`beyond/${key}`, { value: Number.isFinite(value) ? show(value) : words('noNumber'), most: show(most) }))
    }
  }
  const findings = CHECKS.flatMap((check) => findingOf(check, answers[check.id], kept, problems, speaking) ?? [])
  return { findings, problems }
}

function findingOf(
  check: Check,
  answer: string | undefined,
  measured: Measured,
  problems: string[],
  speaking: DiagnosisSpeaking,
): WeighedCheck | null {
  const { words } = speaking
  const graded = gradedOf(check.id, measured, speaking)
  if (graded) return { check, ...graded, measured: true }
  if (answer === undefined || answer === '') return null
  const chosen = check.answers.findIndex((one) => one.value === answer)
  if (chosen < 0) {
    problems.push(words('notOffered', { answer, check: words(`check/${check.id}`) }))
    return null
  }
  return { check, weights: saidWeights(check, chosen), words: answerWords(check.id, answer, words), measured: false }
}

/** Chance of hearing the chosen answer where each answer is the true one. */
export function saidWeights(check: Check, chosen: number): number[] {
  const mistaken = (1 - check.reliability) / Math.max(1, check.answers.length - 1)
  return check.answers.map((_, at) => (at === chosen ? check.reliability : mistaken))
}

function gradedOf(id: CheckId, { capacityShare, outletGpg, tapGpg, saltShareOfSetting }: Measured, speaking: DiagnosisSpeaking) {
  if (id === 'capacity' && capacityShare != null) return gradeCapacity(capacityShare, speaking)
  if (id === 'outlet' && (outletGpg != null || tapGpg != null)) return gradeOutlet(outletGpg ?? null, tapGpg ?? null, speaking)
  if (id === 'salt' && saltShareOfSetting != null) return gradeSalt(saltShareOfSetting, speaking)
  return null
}
