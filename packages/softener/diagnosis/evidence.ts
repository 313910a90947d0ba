import { quoteNumber } from '@almanac/units/format-number'
import type { Check, CheckId } from './check-types.ts'
import { CHECKS } from './checks.ts'
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

const LIMITS: Record<keyof Measured, { most: number; name: string }> = {
  capacityShare: { most: 1.5, name: 'measured capacity, as a share,' },
  outletGpg: { most: 250, name: 'hardness at the valve outlet, in gpg,' },
  tapGpg: { most: 250, name: 'hardness at the tap, in gpg,' },
  saltShareOfSetting: { most: 10, name: 'salt used, as a share of the setting,' },
}

/** Answers and measurements as weights over each check's answers, in the order of the checks. What cannot be is named and left out. */
export function readEvidence({ answers, measured = {} }: Evidence): Findings {
  const problems: string[] = []
  const kept: Measured = {}
  for (const key of Object.keys(LIMITS) as (keyof Measured)[]) {
    const value = measured[key]
    if (value === null || value === undefined) continue
    if (value >= 0 && value <= LIMITS[key].most) kept[key] = value
    else
      problems.push(
        `The ${LIMITS[key].name} of ${quoteNumber(value)} is left out: it must be from 0 to ${LIMITS[key].most}. Measure again.`,
      )
  }
  const findings = CHECKS.flatMap((check) => findingOf(check, answers[check.id], kept, problems) ?? [])
  return { findings, problems }
}

function findingOf(check: Check, answer: string | undefined, measured: Measured, problems: string[]): WeighedCheck | null {
  const graded = gradedOf(check.id, measured)
  if (graded) return { check, ...graded, measured: true }
  if (answer === undefined || answer === '') return null
  const chosen = check.answers.findIndex((one) => one.value === answer)
  if (chosen < 0) {
    problems.push(`The answer “${answer}” to “${check.title}” is not one of those offered, and is left out.`)
    return null
  }
  return { check, weights: saidWeights(check, chosen), words: check.answers[chosen]?.label ?? answer, measured: false }
}

/** Chance of hearing the chosen answer where each answer is the true one. */
export function saidWeights(check: Check, chosen: number): number[] {
  const mistaken = (1 - check.reliability) / Math.max(1, check.answers.length - 1)
  return check.answers.map((_, at) => (at === chosen ? check.reliability : mistaken))
}

function gradedOf(id: CheckId, { capacityShare, outletGpg, tapGpg, saltShareOfSetting }: Measured) {
  if (id === 'capacity' && capacityShare != null) return gradeCapacity(capacityShare)
  if (id === 'outlet' && (outletGpg != null || tapGpg != null)) return gradeOutlet(outletGpg ?? null, tapGpg ?? null)
  if (id === 'salt' && saltShareOfSetting != null) return gradeSalt(saltShareOfSetting)
  return null
}
