import { account } from './account.ts'
import { jobKind } from './job-kind.ts'

/** The rooms that the tablet's pages speak from: all that is loaded there, with signal or without. */
export const field = { account, jobKind }
