/** Where a person has a fact from; kept beside the fact with the day. */
export const factSources = ['call', 'label', 'measured', 'papers'] as const
export type FactSource = (typeof factSources)[number]

export const factSourceWords: Readonly<Record<FactSource, string>> = {
  call: 'The customer said so',
  label: 'Read off the unit',
  measured: 'Measured',
  papers: 'From our records',
}

/** A source as it is kept beside a fact, its day last: "visit 2026-03-04". Screens say it by `sourceText`. */
export const sourceOn = (what: string, day: string): string => [what, day].join(' ')

/** What is kept beside the fact, before its day: "said on a call". */
export const factSourceNotes: Readonly<Record<FactSource, string>> = {
  call: 'said on a call',
  label: 'read off the unit',
  measured: 'measured',
  papers: 'from company records',
}
