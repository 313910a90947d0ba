import { jobStateWords } from '@almanac/records/job-state'
import { visitStateWords } from '@almanac/records/visit-state'

/** The states of a job and of its visit: the records’ own words. */
export const jobState = { ...visitStateWords, ...jobStateWords }
