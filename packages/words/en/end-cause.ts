import { endCauseWords } from '@almanac/records/end-cause'

/** The record's own words: other languages follow them. */
export const endCause = endCauseWords
