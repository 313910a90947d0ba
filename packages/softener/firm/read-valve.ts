import type { ValveCard } from './firm-figures.ts'
import { FIRM_SOURCE } from './read-tank.ts'
import { listWithin, numberWithin, readFields, textWithin, WrongFigure } from './read-value.ts'

/** A valve card as the firm sends it. Throws `WrongFigure`. */
export function ownValve(id: string, value: unknown): ValveCard {
  const fields = readFields(value, 'The valve')
  const label = textWithin(fields.label, 'The valve’s name', 80)
  const words = listWithin(fields.labelWords, 'Words on the label', 0, 20)
  const control = fields.control
  if (control !== 'meter' && control !== 'timer') throw new WrongFigure('A valve runs by meter or by timer. Say which.')
  const flows = listWithin(fields.backwashGpm, 'Backwash flows', 0, 20)
  const backwashGpm = flows
    .map((flow) => numberWithin(flow, 'A backwash flow', { least: 0.2, most: 200, unit: 'gpm' }))
    .sort((a, b) => a - b)
  return {
    id,
    label,
    labelWords: words.map((word) => textWithin(word, 'A word on the label', 40)),
    control,
    tubeOdIn: fields.tubeOdIn == null ? null : numberWithin(fields.tubeOdIn, 'A tube diameter', { least: 0.5, most: 6, unit: 'in' }),
    backwashGpm,
    refillGpm: fields.refillGpm == null ? null : numberWithin(fields.refillGpm, 'A refill flow', { least: 0.05, most: 20, unit: 'gpm' }),
    tubeRule: textWithin(fields.tubeRule ?? '', 'The note on the tube', 300, 0),
    seals: textWithin(fields.seals ?? '', 'The note on seals', 300, 0),
    source: FIRM_SOURCE,
  }
}

/** The cards with one replaced or added; usual ones first, the firm's own in the order they were made. */
export function withValve(cards: readonly ValveCard[], card: ValveCard): ValveCard[] {
  return cards.some((known) => known.id === card.id) ? cards.map((known) => (known.id === card.id ? card : known)) : [...cards, card]
}
