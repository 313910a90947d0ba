/** What leaves doubt about a bed's due date, and can be asked or measured. */
export const questionKeys = ['beginning', 'water-test', 'disinfectant', 'last-seen', 'crosslink', 'iron', 'inspection'] as const
export type QuestionKey = (typeof questionKeys)[number]

export const questionWords: Readonly<Record<QuestionKey, string>> = {
  beginning: 'When did this resin go in? Even the year helps.',
  'water-test': 'Test free and total chlorine at the softener inlet.',
  disinfectant: 'Is the water from the town or a well, and does the town use chlorine or chloramine?',
  'last-seen': 'Is the softener still working, with soft water at the taps?',
  crosslink: 'Is the resin 8% or 10% crosslink?',
  iron: 'Test the raw water for iron.',
  inspection: 'Measure how much water the bed softens between two regenerations.',
}

/** Below this many years of doubt an answer would hardly move a due date: it is not asked for. */
export const worthAskingYears = 0.25
