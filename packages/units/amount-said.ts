import type { AmountName } from './amount-names.ts'

/** What can be said of an amount that was typed or sent. The words are the catalogue's. */
export type AmountSentence =
  | 'notNumber'
  | 'twoWays'
  | 'noUnit'
  | 'noUnitBut'
  | 'tooFine'
  | 'mustBeNumber'
  | 'tooMuch'
  | 'belowZero'
  | 'tooLittle'
  | 'moreThan'
  | 'whole'
  | 'unusual'
  | 'resinTooMuch'
  | 'resinMuch'
  | 'resinLittle'
  | 'gravelTooMuch'
  | 'gravelMuch'
  | 'tubeTooLong'
  | 'tubeLong'
  | 'tubeShort'
  | 'harderThanRaw'

/** A sentence of an amount before it is said in somebody's language: which one, of what, with which amounts and texts; `after` follows it. */
export type AmountSaid = {
  key: AmountSentence
  name?: AmountName
  amounts?: Readonly<Record<string, { value: number; unit: string }>>
  texts?: Readonly<Record<string, string>>
  after?: 'otherTank' | 'checkTank'
  /** Asked back: it may be right. */
  ask?: true
}
