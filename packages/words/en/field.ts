import { account } from './account.ts'
import { asks } from './asks.ts'
import { beadCondition } from './bead-condition.ts'
import { cautions } from './cautions.ts'
import { jobKind } from './job-kind.ts'
import { steps } from './steps.ts'

/** The rooms that the tablet's pages speak from: all that is loaded there, with signal or without. */
export const field = { account, asks, beadCondition, cautions, jobKind, steps }
