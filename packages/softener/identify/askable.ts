import type { ClueId } from './clue-types.ts'

/** What can be asked on the telephone without opening the softener, in the order it is easiest. */
export type AskId = 'label' | 'circumferenceIn' | 'heightWithValveIn' | 'heightIn' | 'diameterIn' | 'jacket'

export type ClueAsk = {
  readonly id: AskId
  readonly title: string
  readonly how: string
  /** The clues that answer it: it is asked while none of them is known. */
  readonly clues: readonly ClueId[]
  /** How often somebody can answer at all. */
  readonly answered: number
}

/** How often each can be answered is from memory, unverified. */
export const ASKS: readonly ClueAsk[] = [
  {
    id: 'label',
    title: 'read the label',
    how: 'Look on the tank’s side and foot, and under the sleeve, for a size such as 10x54 or 1054.',
    clues: ['writtenDiameterIn', 'writtenHeightIn'],
    answered: 0.35,
  },
  {
    id: 'circumferenceIn',
    title: 'measure the circumference',
    how: 'Tape or string round the tank at half its height, under the sleeve if there is one, level all round.',
    clues: ['circumferenceIn'],
    answered: 0.97,
  },
  {
    id: 'heightIn',
    title: 'measure the height without the valve',
    how: 'From the floor straight up to where the tank ends and the valve begins.',
    clues: ['heightIn'],
    answered: 0.9,
  },
  {
    id: 'heightWithValveIn',
    title: 'measure the height with the valve',
    how: 'From the floor straight up to the top of the valve.',
    clues: ['heightWithValveIn', 'heightIn'],
    answered: 0.97,
  },
  {
    id: 'diameterIn',
    title: 'measure across the tank',
    how: 'Stand two books against the tank’s sides and measure between them.',
    clues: ['diameterIn', 'circumferenceIn'],
    answered: 0.9,
  },
  {
    id: 'jacket',
    title: 'feel for a sleeve',
    how: 'Is the tank hard all round, or does it wear a soft sleeve or a shell over it?',
    clues: ['jacket'],
    answered: 0.97,
  },
]
