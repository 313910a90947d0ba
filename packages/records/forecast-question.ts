/** What leaves doubt about a bed's due date, and can be asked or measured. */
export const questionKeys = ['beginning', 'water-test', 'disinfectant', 'last-seen', 'crosslink', 'iron', 'inspection'] as const
export type QuestionKey = (typeof questionKeys)[number]

/** Below this many years of doubt an answer would hardly move a due date: it is not asked for. */
export const worthAskingYears = 0.25
