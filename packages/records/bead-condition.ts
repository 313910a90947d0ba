/**
 * How the beads of a bed look in the hand: the one set of words for the steps of a visit, an inspection and a close-out. `some-soft`: here and there one
 * crushes between the fingers; `mushy`: most do; `broken`: cracked or in pieces, many fines; `iron-fouled`: rust-colored; `resin-missing`: the
 * beads that are left look sound, but much of the bed is gone.
 */
export const beadConditions = ['firm', 'some-soft', 'mushy', 'broken', 'iron-fouled', 'resin-missing'] as const
export type BeadCondition = (typeof beadConditions)[number]

export const beadConditionWords: Readonly<Record<BeadCondition, string>> = {
  firm: 'Firm and whole',
  'some-soft': 'Some soft',
  mushy: 'Mushy: most crush between the fingers',
  broken: 'Broken or cracked, many fines',
  'iron-fouled': 'Rust-colored',
  'resin-missing': 'Much resin missing',
}
