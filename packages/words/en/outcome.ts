import { visitOutcomeWords } from '@almanac/records/visit-outcome'

/** The record's own words: other languages follow them. */
export const outcome = visitOutcomeWords
