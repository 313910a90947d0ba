/** Units that are words and no signs, as they stand beside a number to type. A company’s own units for its stores stay as it wrote them. */
export const unitWord = {
  pails: 'pails',
  people: 'people',
  days: 'days',
  rebeds: 'rebeds',
  notices: 'notices',
  bag: 'bag',
  piece: 'piece',
  set: 'set',
} as const
