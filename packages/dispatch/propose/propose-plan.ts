import type { RoutePlan, Sequences } from '../problem/plan.ts'
import { startPlanning } from '../search/planner.ts'
import { timetable } from '../search/timetable.ts'
import { explainNoFit } from '../slots/explain-no-fit.ts'
import type { Board } from './board.ts'
import { type Breakdown, breakDown, sayChange } from './breakdown.ts'
import { type Built, buildProblem } from './build-problem.ts'
import { type Difference, differencesOf, type Spot, spotsOf } from './differences.ts'
import { newFaults, planFaults } from './plan-faults.ts'
import { roundToFiveMinutes } from './round-to-five-minutes.ts'

/** A plan proposed, as what it changes. */
export interface Proposal {
  readonly differences: readonly Difference[]
  readonly before: Breakdown
  readonly after: Breakdown
  /** What changes, in plain words. */
  readonly sentences: readonly string[]
  /** Jobs that stay waiting, and why. */
  readonly waiting: readonly { readonly jobId: string; readonly why: string }[]
  /** Where every job is in the plan, by job id. */
  readonly spots: ReadonlyMap<string, Spot>
  /** What the plan does wrong that was not wrong before; a proposal with any must not be saved as it is. Found by the separate checker. */
  readonly violations: readonly string[]
  /** What was wrong with the sheets before, by the same checker. */
  readonly alreadyWrong: readonly string[]
  readonly notes: readonly string[]
}

/** A proposal under way: can be asked for at any time, and goes on from there. */
export interface Proposing {
  /** Makes up to so many iterations; asks `shouldStop` after each. Answers how many it made. */
  improve(iterations: number, shouldStop?: () => boolean): number
  proposal(): Proposal
}

/**
 * Plans the board from its present state: promises stay, jobs that stand on a sheet move only where that saves more than `perMove`, waiting ones are placed where that
 * costs less than leaving them. The same board, seed and iterations give the same proposal.
 */
export function startProposal(board: Board, how: { seed: number }): Proposing | { faults: string[] } {
  const built = buildProblem(board, { disturbance: true })
  if ('faults' in built) return built
  const planner = startPlanning(built.problem, { seed: how.seed, from: built.present })
  return {
    improve: (iterations, shouldStop) => planner.improve(iterations, shouldStop),
    proposal: () => {
      // Both are told on the five minutes; what that costs must not make the plan worse than what stands.
      const stands = roundToFiveMinutes(built, timetable(built.problem, built.present).plan)
      const found = roundToFiveMinutes(built, planner.best())
      const better = found.objective.total <= stands.objective.total ? found : stands
      return toProposal(built, presentSpots(built), breakDown(built, stands), better)
    },
  }
}

/** Where the jobs are now: at the time written on the sheet, else as early as they can be. */
export function presentSpots(built: Built): Map<string, Spot> {
  const spots = spotsOf(built, timetable(built.problem, built.present).plan)
  for (const sheet of built.board.sheets) {
    for (const { jobId, startMinute } of sheet.visits) {
      const spot = spots.get(jobId)
      if (spot !== undefined && startMinute !== undefined) spots.set(jobId, { ...spot, startMinute })
    }
  }
  return spots
}

/** A plan against where the jobs were. `about` limits whose waiting is explained. */
export function toProposal(
  built: Built,
  was: ReadonlyMap<string, Spot>,
  before: Breakdown,
  plan: RoutePlan,
  about?: ReadonlySet<string>,
): Proposal {
  const spots = spotsOf(built, plan)
  const after = breakDown(built, plan)
  const planned: Built = { ...built, present: sequencesOf(plan) }
  const standing = planFaults(built, timetable(built.problem, built.present).plan)
  const stays = built.board.jobs.filter((job) => !spots.has(job.id) && (about === undefined || about.has(job.id)))
  return {
    differences: differencesOf(built.board, was, spots),
    before,
    after,
    sentences: sayChange(before, after, built.board),
    waiting: stays.map((job) => ({
      jobId: job.id,
      why: explainNoFit(planned, job.id) ?? `${job.label} could be placed, but costs more now than it gains.`,
    })),
    spots,
    violations: newFaults(standing, planFaults(built, plan)),
    alreadyWrong: standing.map((fault) => fault.sentence),
    notes: built.notes,
  }
}

function sequencesOf(plan: RoutePlan): Sequences {
  return plan.days.map((day) => day.visits.map((planned) => planned.visit))
}
