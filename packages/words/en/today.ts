/** The technician's day. */
export const today = {
  title: 'Today’s work',
  allCrews: 'You are on no day sheet, so you see every crew’s visits.',
  loading: 'Loading today’s work…',
  none: 'No visits today',
  noneYet: 'The office books visits on your day sheet. They show up here automatically.',
  finished: 'Finished',
  tomorrow: 'Tomorrow',
  ahead: 'The week ahead',
  directions: 'Directions',
  directionsTo: 'Directions to {site}',
  whichTank: 'Which tank?',
  whatsWrong: 'What’s wrong?',
  until: 'to {until}',
  sizeUnknown: 'tank size not recorded',
  withPeople: 'with {people}',
  alone: 'alone',
} as const
