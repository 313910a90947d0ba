import { type LevelLimits, type LevelledBed, type LevelPlan, levelRebeds } from '@almanac/forecast/fleet/level-rebeds'
import type { Result } from '@almanac/units/result'

export type LevelInput = { beds: LevelledBed[]; limits: LevelLimits }

/** The levelling as a thread of its own calls it: the solver holds its thread for seconds. */
export function levelAside({ beds, limits }: LevelInput): Promise<Result<LevelPlan>> {
  return levelRebeds(beds, limits)
}
