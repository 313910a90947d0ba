import type { Display } from './display.ts'

/** Names in a row as the locale joins them: "Ruth, Sam, and Ole"; "Ruth y Sam". */
export const formatList = (names: readonly string[], { locale }: Pick<Display, 'locale'>): string =>
  new Intl.ListFormat(locale).format(names)
