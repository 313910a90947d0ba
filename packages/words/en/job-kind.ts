import { jobKindWords } from '@almanac/records/job-kind'

/** The record's own words: other languages follow them. */
export const jobKind = jobKindWords
