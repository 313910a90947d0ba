import type { ImportColumn, ImportColumnChoice } from '@almanac/contract/imports'

/** What was chosen for a column, without why it was suggested. */
export const choiceOf = ({ header: _h, confidence: _c, reason: _r, ask: _a, examples: _e, ...choice }: ImportColumn): ImportColumnChoice =>
  choice
