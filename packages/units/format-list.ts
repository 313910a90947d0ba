import type { Display } from './display.ts'

/** Names in a row as the locale joins them: "Ruth, Sam, and Ole"; "Ruth y Sam"; as a choice "Ruth, Sam, or Ole". */
export const formatList = (
  names: readonly string[],
  { locale }: Pick<Display, 'locale'>,
  type: 'conjunction' | 'disjunction' = 'conjunction',
): string => new Intl.ListFormat(locale, { type }).format(names)
