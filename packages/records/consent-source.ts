/** Where an answer about being reached came from. */
export const consentSources = ['call', 'visit', 'letter', 'link', 'import'] as const
export type ConsentSource = (typeof consentSources)[number]

export const consentSourceWords: Readonly<Record<ConsentSource, string>> = {
  call: 'At a call',
  visit: 'At a visit',
  letter: 'In a letter',
  link: 'By a link in a message',
  import: 'From an import',
}
