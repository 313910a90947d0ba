const months: readonly [RegExp, number][] = [
  [/^jan(?:uary|\.)?$/, 1],
  [/^feb(?:ruary|uary|\.)?$/, 2],
  [/^mar(?:ch|\.)?$/, 3],
  [/^apr(?:il|\.)?$/, 4],
  [/^may\.?$/, 5],
  [/^june?\.?$/, 6],
  [/^july?\.?$/, 7],
  [/^aug(?:ust|\.)?$/, 8],
  [/^sept?(?:ember|\.)?$/, 9],
  [/^oct(?:ober|\.)?$/, 10],
  [/^nov(?:ember|\.)?$/, 11],
  [/^dec(?:ember|\.)?$/, 12],
]

/** The source of a pattern that finds an English month name or its abbreviation. */
export const monthPattern =
  '(?:jan(?:uary)?|feb(?:r?uary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?'

/** The month 1–12 an English name or abbreviation means; null for any other word. */
export function monthOf(word: string): number | null {
  const plain = word.toLowerCase()
  return months.find(([pattern]) => pattern.test(plain))?.[1] ?? null
}
