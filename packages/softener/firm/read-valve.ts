import type { ValveCard } from './firm-figures.ts'
import { FIRM_SOURCE } from './read-tank.ts'
import { readFields, readList, readNumber, readText, WrongFigure } from './read-value.ts'

/** A valve card as the firm sends it. Throws `WrongFigure`. */
export function readValve(id: string, value: unknown): ValveCard {
  const fields = readFields(value, 'The valve')
  const label = readText(fields.label, 'The valve’s name', 80)
  const words = readList(fields.labelWords, 'Words on the label', 0, 20)
  const control = fields.control
  if (control !== 'meter' && control !== 'timer') throw new WrongFigure('A valve runs by meter or by timer. Say which.')
  const flows = readList(fields.backwashGpm, 'Backwash flows', 0, 20)
  const backwashGpm = flows.map((flow) => readNumber(flow, 'A backwash flow', { least: 0.2, most: 200, unit: 'gpm' })).sort((a, b) => a - b)
  return {
    id,
    label,
    labelWords: words.map((word) => readText(word, 'A word on the label', 40)),
    control,
    tubeOdIn: fields.tubeOdIn == null ? null : readNumber(fields.tubeOdIn, 'A tube diameter', { least: 0.5, most: 6, unit: 'in' }),
    backwashGpm,
    refillGpm: fields.refillGpm == null ? null : readNumber(fields.refillGpm, 'A refill flow', { least: 0.05, most: 20, unit: 'gpm' }),
    tubeRule: readText(fields.tubeRule ?? '', 'The note on the tube', 300, 0),
    seals: readText(fields.seals ?? '', 'The note on seals', 300, 0),
    source: FIRM_SOURCE,
  }
}

/** The cards with one replaced or added; usual ones first, the firm's own in the order they were made. */
export function withValve(cards: readonly ValveCard[], card: ValveCard): ValveCard[] {
  return cards.some((known) => known.id === card.id) ? cards.map((known) => (known.id === card.id ? card : known)) : [...cards, card]
}
