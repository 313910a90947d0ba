import { plainSigns, readNumber as readAny } from '@almanac/units/read-number'

/** A number without a fraction: in a list "10/54" is a tank and "3/14" a day. */
const PLAIN = /^[+-]?[\d.,'’\s]+$/
/** A fraction as rules and labels have it: "1½", "1 1/2", "1-1/2", "3/4". */
const FRACTION = /^(?:\d+(?:\s+|-))?\d{1,2}\/(?:2|3|4|8|16)$|^\d*[\s-]*[¼½¾]$/

/**
 * A decimal number as people and spreadsheets write it: "1,234.5", "1 234,5", "0,8", "18"; null where the text is anything else. Read as typed amounts
 * are, by the locale that is usual: a single comma before exactly three digits groups thousands ("48,000").
 */
export function readPlainNumber(text: string): number | null {
  return PLAIN.test(plainSigns(text).trim()) ? readAny(text) : null
}

/** A number that may be a fraction of inches or cubic feet: "1½", "1 1/2", "1-1/2", "3/4", "1.5". */
export function readFraction(text: string): number | null {
  const written = plainSigns(text)
    .trim()
    .replace(/\s*-\s*(?=\d)/, '-')
  return FRACTION.test(written) ? readAny(written) : readPlainNumber(text)
}
