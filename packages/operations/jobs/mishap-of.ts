import { PlanAsked } from '@almanac/contract/plans'

/** What a stored plan was asked for; what a plan of an earlier version does not say is filled in. */
export const askedOf = (stored: unknown): PlanAsked => PlanAsked.parse(stored)

/** The sheet that a plan's mishap is about and who of it is missing, as the board is asked for. */
export const mishapOf = (asked: PlanAsked) =>
  asked.kind === 'week' || asked.kind === 'crews'
    ? {}
    : { mishap: { sheetId: asked.crewDayId, missingIds: asked.kind === 'fewer-people' ? asked.missingIds : [] } }
