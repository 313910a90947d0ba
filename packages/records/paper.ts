/** What a company prints on. */
export const papers = ['letter', 'a4'] as const
export type Paper = (typeof papers)[number]

/** The sizes: ANSI Y14.1 and ISO 216. */
export const paperWords: Readonly<Record<Paper, string>> = { letter: 'Letter, 8.5 × 11 in', a4: 'A4, 210 × 297 mm' }
