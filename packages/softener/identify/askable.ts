import type { ClueId } from './clue-types.ts'

/** What can be asked on the telephone without opening the softener, in the order it is easiest. */
export type AskId = 'label' | 'circumferenceIn' | 'heightWithValveIn' | 'heightIn' | 'diameterIn' | 'jacket'

/** `ask/…` of the words of the page says what is asked, and how it is done. */
export type ClueAsk = {
  readonly id: AskId
  /** The clues that answer it: it is asked while none of them is known. */
  readonly clues: readonly ClueId[]
  /** How often somebody can answer at all. */
  readonly answered: number
}

/** How often each can be answered is from memory, unverified. */
export const ASKS: readonly ClueAsk[] = [
  {
    id: 'label',
    clues: ['writtenDiameterIn', 'writtenHeightIn'],
    answered: 0.35,
  },
  {
    id: 'circumferenceIn',
    clues: ['circumferenceIn'],
    answered: 0.97,
  },
  {
    id: 'heightIn',
    clues: ['heightIn'],
    answered: 0.9,
  },
  {
    id: 'heightWithValveIn',
    clues: ['heightWithValveIn', 'heightIn'],
    answered: 0.97,
  },
  {
    id: 'diameterIn',
    clues: ['diameterIn', 'circumferenceIn'],
    answered: 0.9,
  },
  {
    id: 'jacket',
    clues: ['jacket'],
    answered: 0.97,
  },
]
