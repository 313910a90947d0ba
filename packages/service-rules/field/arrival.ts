/** What a numbered command of a tablet meets: the highest number taken from its queue (0 for none), its own, and the lowest that the tablet still holds. */
export type Arriving = { taken: number; sequence: number; oldest: number }

export type Arrival =
  /** The next one: apply it. */
  | { is: 'next' }
  /** The numbers between were taken from nobody and will never come: say so to the office, then apply. */
  | { is: 'after-loss'; from: number; until: number }
  /** The tablet still holds a lower one: nothing is stored, and that one is asked for. */
  | { is: 'too-early'; expects: number }
  /** A number that was taken, under another command: it waits for the dispatcher. */
  | { is: 'number-used' }

/** Where a command that was never answered stands in its queue. One that was answered is not judged: it gets its stored answer. */
export function judgeArrival({ taken, sequence, oldest }: Arriving): Arrival {
  const expects = taken + 1
  if (sequence < expects) return { is: 'number-used' }
  if (sequence === expects) return { is: 'next' }
  // A tablet holds what it sends: a word that it holds only higher ones is not believed beyond the number sent.
  const held = Math.min(oldest, sequence)
  return held <= expects
    ? { is: 'too-early', expects }
    : held === sequence
      ? { is: 'after-loss', from: expects, until: sequence - 1 }
      : { is: 'too-early', expects: held }
}
