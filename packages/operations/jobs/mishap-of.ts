import type { PlanAsked } from '@almanac/contract/plans'

/** The sheet that a plan's mishap is about and who of it is missing, as the board is asked for. */
export const mishapOf = (asked: PlanAsked) =>
  asked.kind === 'week' ? {} : { mishap: { sheetId: asked.crewDayId, missingIds: asked.kind === 'fewer-people' ? asked.missingIds : [] } }
