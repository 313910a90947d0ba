/** What a plan is worked out for: the days ahead, what is left after a mishap, or who goes with whom on a day. */
export const planKinds = ['week', 'sheet-off', 'fewer-people', 'other-vehicle', 'crews'] as const
export type PlanKind = (typeof planKinds)[number]

/** The states of a plan worked out in the background. */
export const planStates = ['running', 'ready', 'failed', 'stopped', 'accepted'] as const
export type PlanState = (typeof planStates)[number]

/** What a person has to confirm before a visit is placed at an unusual time. */
export const unusualReasons = ['outside-hours', 'past', 'promise', 'crew', 'parts', 'site-hours', 'order', 'drive', 'load'] as const
export type Unusual = (typeof unusualReasons)[number]

/** The halves of a working day, as people ask for them: a visit begins before noon, or at noon or later. */
export const dayHalves = ['morning', 'afternoon'] as const
export type DayHalf = (typeof dayHalves)[number]

/** How full a day is planned: by the usual lengths, or so that it ends late at most one day in ten. */
export const dayFills = ['usual', 'one-in-ten'] as const
export type DayFill = (typeof dayFills)[number]
export const dayFillWords: Readonly<Record<DayFill, string>> = { usual: 'as long as usual', 'one-in-ten': 'late at most one day in ten' }
