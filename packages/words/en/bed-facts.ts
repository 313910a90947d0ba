/** A tank, a bed and their times, in a few words. */
export const bedFacts = {
  sizeUnknown: 'tank size not known',
  grain: '{count} grain',
  by: 'by {day}',
  sinceOrLater: 'since {day} or later',
  years: '{from} to {to}',
} as const
