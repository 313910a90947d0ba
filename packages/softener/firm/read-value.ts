import { quoteNumber } from '@almanac/units/format-number'

/** Thrown by the readers below with the sentence that says what is wrong; caught by `readFigure` alone. */
export class WrongFigure extends Error {}

type Bounds = { least: number; most: number; unit: string }

/** A number within bounds, or the sentence. */
export function numberWithin(value: unknown, what: string, { least, most, unit }: Bounds): number {
  const span = `${least} to ${most}${unit === '' ? '' : ` ${unit}`}`
  if (typeof value !== 'number') throw new WrongFigure(`${what} must be a number, ${span}.`)
  if (!(value >= least && value <= most)) throw new WrongFigure(`${what} of ${quoteNumber(value)} is outside ${span}.`)
  return value
}

/** Text of 1 to `most` characters without blanks around it. */
export function textWithin(value: unknown, what: string, most: number, least = 1): string {
  const text = typeof value === 'string' ? value.trim() : null
  if (text === null || text.length < least || text.length > most)
    throw new WrongFigure(`${what} must be ${least === 0 ? 'at most' : `${least} to`} ${most} characters of text.`)
  return text
}

export function listWithin(value: unknown, what: string, least: number, most: number): readonly unknown[] {
  if (!Array.isArray(value) || value.length < least || value.length > most)
    throw new WrongFigure(`${what} must be a list of ${least} to ${most}.`)
  return value
}

export function readFields(value: unknown, what: string): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new WrongFigure(`${what} can’t be read.`)
  return value as Record<string, unknown>
}
