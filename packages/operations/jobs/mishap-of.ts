import type { PlanAsked } from '@almanac/contract/plans'

/** The sheet that a plan's mishap is about, as the board is asked for. */
export const mishapOf = (asked: PlanAsked) => (asked.kind === 'week' ? {} : { mishapSheetId: asked.crewDayId })
