import { type LevelLimits, type LevelledBed, type LevelPlan, levelRebeds } from '@almanac/forecast/fleet/level-rebeds'
import { answerAside } from '@almanac/runtime/answer-aside'
import type { Result } from '@almanac/units/result'

export type LevelInput = { beds: LevelledBed[]; limits: LevelLimits }

/** The levelling as a process of its own calls it: the solver holds its process for seconds. */
function levelAside({ beds, limits }: LevelInput): Promise<Result<LevelPlan>> {
  return levelRebeds(beds, limits)
}

answerAside(levelAside)
