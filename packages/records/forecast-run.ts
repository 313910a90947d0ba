/** How far a forecast run reaches: a few beds, written at once; a company, staged and shown together. */
export const runScopes = ['beds', 'company'] as const
export type RunScope = (typeof runScopes)[number]

/** What the month picture can be grouped by. */
export const dueGroupings = ['supply', 'area', 'resin'] as const
export type DueGrouping = (typeof dueGroupings)[number]
