/** How beads look in the hand: a key for each value of `beadConditions`. */
export const beadCondition = {
  firm: 'Firm and whole',
  'some-soft': 'Some soft',
  mushy: 'Mushy: most crush between the fingers',
  broken: 'Broken or cracked, many fines',
  'iron-fouled': 'Rust-colored',
  'resin-missing': 'Much resin missing',
} as const
