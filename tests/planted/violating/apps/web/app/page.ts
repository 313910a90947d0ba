import { bookVisit } from '@almanac/operations/jobs/book-visit'

export const book = bookVisit
