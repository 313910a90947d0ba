import type { Key, Words } from '@almanac/words/words'

/** What the procedures say, in the reader's language. */
export type ProcedureWords = {
  steps: Words<'steps'>
  cautions: Words<'cautions'>
  asks: Words<'asks'>
  beadCondition: Words<'beadCondition'>
  kit: Words<'kit'>
}

export type StepKey = Key<'steps'>
export type CautionKey = Key<'cautions'>
export type AskKey = Key<'asks'>

/** A room asked by a key that a rule holds: a test says every procedure in every language, so a key that is not there turns it red. */
export type Say = (key: string, values?: Readonly<Record<string, string>>) => string
