import { beadConditionWords } from '@almanac/records/bead-condition'

/** The record's own words: other languages follow them. */
export const beadCondition = beadConditionWords
