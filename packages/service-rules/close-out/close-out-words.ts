import type { Words } from '@almanac/words/words'

/** What the sentences about a close-out are said in. */
export type CloseOutWords = {
  words: Words<'lacking'>
  outcomes: Words<'outcome'>
  stops: Words<'stop'>
  amounts: Words<'amount'>
  amountNames: Words<'amountName'>
}
