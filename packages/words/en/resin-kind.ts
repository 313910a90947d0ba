import { resinKindWords } from '@almanac/records/resin-kind'

/** The record's own words: other languages follow them. */
export const resinKind = resinKindWords
